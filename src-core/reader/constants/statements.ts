import type { TypedExpression, TypedStatement, Variable } from "../typed/nodes.ts";
import { integerTypeOf } from "../types/conversions.ts";
import { deepestLevel, evaluateIn, type Run } from "./evaluate.ts";
import { compute } from "./integer-operators.ts";
import { runSwitch } from "./switch.ts";
import { convertValue, integerValue, truth, type UnknownValue, unknown, type Value } from "./value.ts";

/** What follows a statement. */
export type Outcome =
  | { readonly kind: "next" | "break" | "continue" }
  | { readonly kind: "return"; readonly value: Value }
  | UnknownValue;

export const next: Outcome = { kind: "next" };

/** Runs a statement on known values of locals; gives up where it does anything else. */
export function execute(run: Run, locals: Map<Variable, Value>, statement: TypedStatement): Outcome {
  const { budget } = run;
  budget.steps -= 1;
  if (budget.steps <= 0) return unknown("too much work for a constant");
  if (budget.depth >= deepestLevel) return unknown("nested too deeply");
  budget.depth += 1;
  const outcome = executeAny(run, locals, statement);
  budget.depth -= 1;
  return outcome;
}

function executeAny(run: Run, locals: Map<Variable, Value>, statement: TypedStatement): Outcome {
  switch (statement.kind) {
    case "block":
      return executeAll(run, locals, statement.statements);
    case "expression":
      return perform(run, locals, statement.expression);
    case "variables":
      return declareLocals(run, locals, statement.variables);
    case "if":
      return executeIf(run, locals, statement);
    case "while":
    case "do":
    case "for":
      return executeLoop(run, locals, statement);
    case "switch":
      return runSwitch(run, locals, statement);
    case "case":
    case "default":
    case "label":
      return statement.body === undefined ? next : execute(run, locals, statement.body);
    case "return":
      return {
        kind: "return",
        value: statement.value === undefined ? unknown("no value") : evaluateIn(run, statement.value).value,
      };
    case "break":
    case "continue":
      return { kind: statement.kind };
    case "empty":
      return next;
    case "range-for":
    case "goto":
    case "assembly":
    case "not-understood":
      return unknown(`a statement (${statement.kind}) that no constant needs`);
  }
}

function executeAll(run: Run, locals: Map<Variable, Value>, statements: readonly TypedStatement[]): Outcome {
  for (const statement of statements) {
    const outcome = execute(run, locals, statement);
    if (outcome.kind !== "next") return outcome;
  }
  return next;
}

function declareLocals(run: Run, locals: Map<Variable, Value>, variables: readonly Variable[]): Outcome {
  for (const variable of variables) {
    if (variable.storage !== "local") return unknown(`\`${variable.name}\` is not local`);
    const { initializer } = variable;
    if (initializer === undefined) locals.set(variable, unknown(`\`${variable.name}\` has no value yet`));
    else if (initializer.kind === "value" && initializer.value.type.kind !== "array") {
      locals.set(variable, evaluateIn(run, initializer.value).value);
    }
  }
  return next;
}

function executeIf(
  run: Run,
  locals: Map<Variable, Value>,
  statement: Extract<TypedStatement, { kind: "if" }>,
): Outcome {
  if (statement.init !== undefined) {
    const outcome = execute(run, locals, statement.init);
    if (outcome.kind !== "next") return outcome;
  }
  const test = evaluateIn(run, statement.condition).value;
  const taken = truth(test);
  if (taken === undefined) return test.kind === "unknown" ? test : unknown("a condition without a value");
  if (taken) return execute(run, locals, statement.then);
  return statement.otherwise === undefined ? next : execute(run, locals, statement.otherwise);
}

type Loop = Extract<TypedStatement, { kind: "while" | "do" | "for" }>;

function executeLoop(run: Run, locals: Map<Variable, Value>, loop: Loop): Outcome {
  if (loop.kind === "for" && loop.init !== undefined) {
    const outcome = execute(run, locals, loop.init);
    if (outcome.kind !== "next") return outcome;
  }
  for (let isFirst = true; ; isFirst = false) {
    run.budget.steps -= 1;
    if (run.budget.steps <= 0) return unknown("too much work for a constant");
    if (loop.kind === "while" && loop.declared !== undefined) return unknown("a condition that declares");
    if (loop.condition !== undefined && !(loop.kind === "do" && isFirst)) {
      const test = evaluateIn(run, loop.condition).value;
      const goesOn = truth(test);
      if (goesOn === undefined)
        return test.kind === "unknown" ? test : unknown("a condition without a value");
      if (!goesOn) return next;
    }
    const outcome = execute(run, locals, loop.body);
    if (outcome.kind === "break") return next;
    if (outcome.kind === "return" || outcome.kind === "unknown") return outcome;
    if (loop.kind === "for" && loop.step !== undefined) {
      const stepped = perform(run, locals, loop.step);
      if (stepped.kind !== "next") return stepped;
    }
  }
}

/** An expression for its effect: assignments to locals; what has no effect is passed over. */
function perform(run: Run, locals: Map<Variable, Value>, expression: TypedExpression): Outcome {
  switch (expression.kind) {
    case "assign":
      return store(locals, expression.target, evaluateIn(run, expression.value).value);
    case "compound-assign":
      return store(locals, expression.target, compound(run, expression));
    case "update":
      return store(locals, expression.operand, updated(run, expression));
    case "comma": {
      const outcome = perform(run, locals, expression.left);
      return outcome.kind === "next" ? perform(run, locals, expression.right) : outcome;
    }
    case "convert":
      return perform(run, locals, expression.operand);
    default: {
      const { value } = evaluateIn(run, expression);
      return value.kind === "unknown" ? value : next;
    }
  }
}

function store(locals: Map<Variable, Value>, target: TypedExpression, value: Value): Outcome {
  if (target.kind !== "variable" || !locals.has(target.variable)) {
    return unknown("it writes to something that is not its own");
  }
  if (target.type.volatile === true) return unknown("it writes to a volatile object");
  locals.set(target.variable, convertValue(value, target.type));
  return next;
}

function compound(run: Run, expression: Extract<TypedExpression, { kind: "compound-assign" }>): Value {
  const left = convertValue(evaluateIn(run, expression.target).value, expression.computeIn);
  const right = evaluateIn(run, expression.value).value;
  if (left.kind === "unknown") return left;
  if (right.kind === "unknown") return right;
  if (left.kind !== "integer" || right.kind !== "integer") return unknown("not integers");
  const { got } = compute(expression.operator, left.value, right.value, left.type);
  return got === undefined ? unknown("no result") : integerValue(got, left.type);
}

function updated(run: Run, expression: Extract<TypedExpression, { kind: "update" }>): Value {
  const { value } = evaluateIn(run, expression.operand);
  const type = integerTypeOf(expression.operand.type);
  if (value.kind !== "integer" || type === undefined)
    return value.kind === "unknown" ? value : unknown("no integer");
  return integerValue(value.value + (expression.operator === "++" ? 1n : -1n), type);
}
