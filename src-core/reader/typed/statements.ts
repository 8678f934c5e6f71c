import type { AssemblyOperand, Block, Condition, Statement } from "../syntax/nodes.ts";
import { referred } from "../types/derive.ts";
import { atOf, type Context, deepest, inScope } from "./context.ts";
import { convertTo, promoted } from "./convert.ts";
import { declare } from "./declarations.ts";
import { typeExpression } from "./expressions.ts";
import { initializerFrom } from "./initializers.ts";
import { decayed, unresolved, valueType } from "./make.ts";
import type { TypedAssemblyOperand, TypedBlock, TypedExpression, TypedStatement } from "./nodes.ts";
import { typeRangeFor } from "./range-loops.ts";
import { blockScope } from "./scope.ts";
import { condition } from "./truth.ts";

/** Types the statements of a block in `context.scope`, which the caller has opened. */
export function typeBlock(context: Context, block: Block): TypedBlock {
  const statements = block.statements.map((statement) => typeStatement(context, statement));
  return { kind: "block", at: atOf(context, block), statements };
}

export function typeStatement(context: Context, statement: Statement): TypedStatement {
  const { unit } = context;
  if (unit.depth >= deepest) {
    return { kind: "not-understood", at: atOf(context, statement), what: "nested too deeply" };
  }
  unit.depth += 1;
  const typed = typeAny(context, statement);
  unit.depth -= 1;
  return typed;
}

function typeAny(context: Context, statement: Statement): TypedStatement {
  const at = atOf(context, statement);
  switch (statement.kind) {
    case "block":
      return typeBlock(inScope(context, blockScope(context.scope)), statement);
    case "expression":
      return { kind: "expression", at, expression: typeExpression(context, statement.expression) };
    case "declaration":
      return { kind: "variables", at, variables: declare(context, statement.declaration) };
    case "if":
    case "while":
    case "switch":
      return typeBranch(context, statement);
    case "do":
      return {
        kind: "do",
        at,
        body: typeStatement(context, statement.body),
        condition: condition(context, typeExpression(context, statement.condition)),
      };
    case "for":
      return typeFor(context, statement);
    case "range-for":
      return typeRangeFor(context, statement);
    case "case":
      return {
        kind: "case",
        at,
        value: typeExpression(context, statement.value),
        upTo: statement.upTo && typeExpression(context, statement.upTo),
        body: statement.body && typeStatement(context, statement.body),
      };
    case "default":
      return { kind: "default", at, body: statement.body && typeStatement(context, statement.body) };
    case "label":
      return {
        kind: "label",
        at,
        name: statement.name,
        body: statement.body && typeStatement(context, statement.body),
      };
    case "return":
      return {
        kind: "return",
        at,
        value: statement.value && typeReturn(context, statement.value),
        parenthesized: statement.parenthesized,
      };
    case "goto":
      return { kind: "goto", at, name: statement.name };
    case "assembly":
      return {
        kind: "assembly",
        at,
        text: statement.text,
        operands: statement.operands,
        outputs: statement.outputs.map((operand) => typeOperand(context, operand)),
        inputs: statement.inputs.map((operand) => typeOperand(context, operand)),
      };
    case "not-understood":
      return { kind: "not-understood", at, what: statement.what };
    case "break":
    case "continue":
    case "empty":
      return { kind: statement.kind, at };
  }
}

function typeOperand(context: Context, { name, constraint, value }: AssemblyOperand): TypedAssemblyOperand {
  return { name, constraint, value: typeExpression(context, value) };
}

function typeReturn(
  context: Context,
  value: Extract<Statement, { kind: "return" }>["value"] & object,
): TypedExpression {
  const { body } = context;
  const expected = body?.returns;
  if (expected !== undefined && value.kind === "list") {
    const at = atOf(context, value);
    const initializer = initializerFrom(context, expected, value);
    if (initializer.kind === "value") return initializer.value;
    return { kind: "construct", at, type: expected, lvalue: false, initializer };
  }
  const typed = typeExpression(context, value, expected);
  if (body === undefined) return typed;
  if (body.returns === undefined) {
    body.returns = valueType(typed);
    return decayed(typed);
  }
  return convertTo(context, typed, body.returns, "return");
}

/** A condition that declares gives its variables as statements to run before. */
interface TypedCondition {
  readonly declared: TypedStatement | undefined;
  readonly value: TypedExpression;
}

function typeCondition(context: Context, syntax: Condition): TypedCondition {
  if (syntax.kind !== "simple") return { declared: undefined, value: typeExpression(context, syntax) };
  const at = atOf(context, syntax);
  const variables = declare(context, syntax);
  const [variable] = variables;
  const value: TypedExpression =
    variable === undefined
      ? unresolved(at, "", "other", [], "a condition that declares nothing")
      : { kind: "variable", at, type: referred(variable.type), lvalue: true, variable };
  return { declared: { kind: "variables", at, variables }, value };
}

function typeBranch(
  context: Context,
  statement: Extract<Statement, { kind: "if" | "while" | "switch" }>,
): TypedStatement {
  const at = atOf(context, statement);
  const inside = inScope(context, blockScope(context.scope));
  const init = statement.kind === "if" && statement.init ? typeStatement(inside, statement.init) : undefined;
  const { declared, value } = typeCondition(inside, statement.condition);
  switch (statement.kind) {
    case "if": {
      const then = typeStatement(inside, statement.then);
      const otherwise = statement.otherwise && typeStatement(inside, statement.otherwise);
      const before = joined(context, statement, init, declared);
      return { kind: "if", at, init: before, condition: condition(context, value), then, otherwise };
    }
    case "while": {
      const body = typeStatement(inside, statement.body);
      return { kind: "while", at, declared, condition: condition(context, value), body };
    }
    case "switch": {
      const body = typeStatement(inside, statement.body);
      const typed: TypedStatement = { kind: "switch", at, condition: promoted(context, value), body };
      return declared === undefined ? typed : { kind: "block", at, statements: [declared, typed] };
    }
  }
}

function joined(
  context: Context,
  statement: Statement,
  init: TypedStatement | undefined,
  declared: TypedStatement | undefined,
): TypedStatement | undefined {
  if (init === undefined || declared === undefined) return init ?? declared;
  return { kind: "block", at: atOf(context, statement), statements: [init, declared] };
}

function typeFor(context: Context, statement: Extract<Statement, { kind: "for" }>): TypedStatement {
  const inside = inScope(context, blockScope(context.scope));
  const at = atOf(context, statement);
  const init = statement.init && typeStatement(inside, statement.init);
  const tested = statement.condition && typeCondition(inside, statement.condition);
  const test = tested && condition(inside, tested.value);
  const step = statement.step && typeExpression(inside, statement.step);
  const body = typeStatement(inside, statement.body);
  if (tested?.declared === undefined || test === undefined)
    return { kind: "for", at, init, condition: test, step, body };
  // `for (; T x = e; )` as `for (;;) { T x = e; if (x) {} else break; ... }`.
  const then: TypedStatement = { kind: "empty", at: test.at };
  const end: TypedStatement = {
    kind: "if",
    at: test.at,
    init: undefined,
    condition: test,
    then,
    otherwise: { kind: "break", at: test.at },
  };
  const whole: TypedStatement = { kind: "block", at: body.at, statements: [tested.declared, end, body] };
  return { kind: "for", at, init, condition: undefined, step, body: whole };
}
