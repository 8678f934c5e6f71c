import type { At, TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import { lowerAssembly } from "./assembly.ts";
import { cleanupSteps } from "./cleanup.ts";
import { turnCycles as cyclesOfTurn, statementCycles } from "./cycles/statements.ts";
import { destroySteps } from "./destructors.ts";
import { firstSteps, ofClass } from "./initializers.ts";
import { copied, objectAt } from "./objects.ts";
import { bound } from "./places.ts";
import { lastingAddress } from "./references.ts";
import { endsWithFunction } from "./results.ts";
import { CannotLower, type FunctionScope, type Jump, type LabelBlock } from "./scope.ts";
import { shapeOf } from "./shape.ts";
import { isPlainSwitch, lowerSwitch } from "./switches.ts";
import { wholeExpression, wholeSteps } from "./temporaries.ts";
import { condition, lowerValue, shapeAt, valueAs } from "./values.ts";
import { turnStarts } from "./waiting.ts";

/** Stands for giving back the frame, until its size is known. */
export const leaveMark = "@leave@";

/** JavaScript for statements; what cannot be run becomes a stop with its place. */
export function lowerStatements(scope: FunctionScope, statements: readonly TypedStatement[]): string {
  return statements.map((statement) => lowerStatement(scope, statement)).join("");
}

export function lowerStatement(scope: FunctionScope, statement: TypedStatement): string {
  return orStop(scope, () => charge(scope, statement) + lowerAny(scope, statement));
}

/** Counts the cycles of a statement, where they are counted; loops count those of their turns with every turn. */
function charge(scope: FunctionScope, statement: TypedStatement): string {
  const { costs } = scope.linkage;
  const cycles = costs === undefined ? 0 : statementCycles(statement, costs);
  return cycles === 0 ? "" : spending(scope, cycles, statement.at);
}

/** Takes off cycles, where they are counted, or else steps. */
export function spending(scope: FunctionScope, cycles: number, at: At): string {
  return `if((C[0]-=${cycles})<0)spent(${scope.place(at)});`;
}

/** What is made, or a stop where that cannot be. */
export function orStop(scope: FunctionScope, make: () => string): string {
  try {
    return make();
  } catch (problem) {
    if (!(problem instanceof CannotLower)) throw problem;
    return stopAt(scope, problem);
  }
}

/** Expressions as statements. */
export function inOrder(steps: readonly string[]): string {
  return steps.map((step) => `${step};`).join("");
}

export function stopAt(scope: FunctionScope, problem: CannotLower): string {
  return `cannot(${scope.linkage.textNumber(problem.message)},${scope.place(problem.at)});`;
}

function lowerAny(scope: FunctionScope, statement: TypedStatement): string {
  const { at } = statement;
  switch (statement.kind) {
    case "block":
      return block(scope, statement, statement.statements);
    case "expression":
      return `${wholeExpression(scope, () => lowerValue(scope, statement.expression))};`;
    case "variables":
      return statement.variables.map((variable) => declare(scope, variable)).join("");
    case "if": {
      if (statement.init !== undefined) {
        const { init } = statement;
        return block(scope, statement, [init, { ...statement, init: undefined }]);
      }
      const otherwise =
        statement.otherwise === undefined ? "" : `else{${lowerStatement(scope, statement.otherwise)}}`;
      return `if(${tested(scope, statement.condition)}){${lowerStatement(scope, statement.then)}}${otherwise}`;
    }
    case "while": {
      if (statement.declared !== undefined) return declaringLoop(scope, statement, statement.declared);
      const test = tested(scope, statement.condition);
      return loop(scope, () => {
        const turns = turnStarts(scope, statement);
        const body = `${tick(scope, statement)}${lowerStatement(scope, statement.body)}`;
        return `${turns.first}while(${test}){${turns.each}${body}}`;
      });
    }
    case "do":
      return loop(scope, () => {
        const turns = turnStarts(scope, statement);
        const body = `${tick(scope, statement)}${lowerStatement(scope, statement.body)}`;
        return `${turns.first}do{${turns.each}${body}}while(${tested(scope, statement.condition)});`;
      });
    case "for": {
      if (statement.init !== undefined)
        return block(scope, statement, [statement.init, { ...statement, init: undefined }]);
      const test = statement.condition === undefined ? "" : tested(scope, statement.condition);
      return loop(scope, () => {
        const turns = turnStarts(scope, statement);
        const body = lowerStatement(scope, statement.body);
        const { step: turned } = statement;
        // Behind the body, which declares what a condition declared.
        const step = turned === undefined ? "" : wholeExpression(scope, () => lowerValue(scope, turned));
        return `${turns.first}for(;${test};${step}){${turns.each}${tick(scope, statement)}${body}}`;
      });
    }
    case "range-for":
      return lowerStatement(scope, writtenOut(statement));
    case "switch":
      if (isPlainSwitch(statement)) return lowerSwitch(scope, statement);
      throw new CannotLower("a `switch` with labels inside of other statements here", at);
    case "case":
    case "default":
      throw new CannotLower("a `case` outside of a `switch`", at);
    case "label":
      return statement.body === undefined ? "" : lowerStatement(scope, statement.body);
    case "goto": {
      const target = scope.labels.get(statement.name);
      if (target === undefined) throw new CannotLower(`a jump to \`${statement.name}\``, at);
      return leavingFor(scope, target) + jump(target.number);
    }
    case "break":
      return leaving(scope, scope.breakDepth) + jumpOut(scope.breakTo, "break");
    case "continue":
      return leaving(scope, scope.continueDepth) + jumpOut(scope.continueTo, "continue");
    case "return":
      return lowerReturn(scope, statement);
    case "assembly":
      return lowerAssembly(scope, statement);
    case "empty":
      return "";
    case "not-understood":
      throw new CannotLower(statement.what, at);
  }
}

/** Counts a turn of a loop. */
export function tick(scope: FunctionScope, statement: TypedStatement): string {
  return spending(scope, turnCycles(scope, statement), statement.at);
}

function turnCycles({ linkage }: FunctionScope, statement: TypedStatement): number {
  return linkage.costs === undefined ? 1 : Math.max(1, cyclesOfTurn(statement, linkage.costs));
}

export function jump(target: number): string {
  return `{pc=${target};continue L;}`;
}

function jumpOut(target: Jump, own: "break" | "continue"): string {
  return typeof target === "number" ? jump(target) : `${own};`;
}

/** Ends the objects of the blocks that are left, the innermost first. */
export function leaving(scope: FunctionScope, depth: number): string {
  return inOrder(
    scope.destroyed
      .slice(depth)
      .flatMap(({ steps }) => steps)
      .reverse(),
  );
}

/**
 * Ends what a jump to a label leaves: all of the blocks that are not around the label, and of the others what is
 * declared after it. A jump forward passes no declaration of an object with a destructor (C++11 6.7p3).
 */
function leavingFor(scope: FunctionScope, { around, live }: LabelBlock): string {
  const left = scope.destroyed.flatMap(({ owner, steps }, level) => {
    const stays = owner === undefined || around.has(owner);
    return stays ? steps.slice(live?.[level] ?? steps.length) : steps;
  });
  return inOrder(left.reverse());
}

function block(scope: FunctionScope, owner: TypedStatement, statements: readonly TypedStatement[]): string {
  return `{${endedBlock(scope, owner, () => lowerStatements(scope, statements))}}`;
}

/** Statements that are a block, and what ends the objects declared in it. */
export function endedBlock(scope: FunctionScope, owner: TypedStatement, make: () => string): string {
  scope.destroyed.push({ owner, steps: [] });
  const body = make();
  const ended = leaving(scope, scope.destroyed.length - 1);
  scope.destroyed.pop();
  return body + ended;
}

/** `while (T x = ...)`: the variable is made and ended with every turn (C++11 6.5.1p2). */
function declaringLoop(
  scope: FunctionScope,
  statement: Extract<TypedStatement, { kind: "while" }>,
  declared: TypedStatement,
): string {
  return loop(scope, () => {
    const turns = turnStarts(scope, statement);
    const turn = endedBlock(scope, statement, () => {
      const head = lowerStatement(scope, declared);
      const end = `{${leaving(scope, scope.destroyed.length - 1)}break;}`;
      return `${head}if(!${tested(scope, statement.condition)})${end}${tick(scope, statement)}${lowerStatement(scope, statement.body)}`;
    });
    return `${turns.first}while(true){${turns.each}${turn}}`;
  });
}

/** A condition, which is a full expression. */
export function tested(scope: FunctionScope, expression: TypedExpression): string {
  return wholeExpression(scope, () => condition(scope, expression));
}

/** A loop in JavaScript's own form. */
function loop(scope: FunctionScope, make: () => string): string {
  const held = [scope.breakTo, scope.continueTo, scope.breakDepth, scope.continueDepth] as const;
  scope.breakTo = "own";
  scope.continueTo = "own";
  scope.breakDepth = scope.destroyed.length;
  scope.continueDepth = scope.destroyed.length;
  const code = make();
  [scope.breakTo, scope.continueTo, scope.breakDepth, scope.continueDepth] = held;
  return code;
}

/** The declaration of a local variable, static ones included. */
export function declare(scope: FunctionScope, variable: Variable): string {
  const { type, initializer, storage, at } = variable;
  const { linkage } = scope;
  if (storage === "static-local") return declareStatic(scope, variable);
  if (storage !== "local") return "";
  const shape = shapeOf(type, linkage.model);
  if (shape === undefined || shape.kind === "none")
    throw new CannotLower(`\`${variable.name}\`, whose type is not known`, at);
  if (type.kind === "reference" && initializer?.kind === "value") {
    const name = ownName(scope, variable);
    const { value } = initializer;
    return inOrder(wholeSteps(scope, () => [`${name}=${lastingAddress(scope, value, type.to, "block")}`]));
  }
  if (shape.kind !== "object" && !scope.inMemory.has(variable)) return declareScalar(scope, variable);
  const size = sizeOf(type, linkage.model);
  if (size === undefined) throw new CannotLower(`\`${variable.name}\`, whose size is not known`, at);
  const address = scope.addresses.get(variable) ?? scope.room(size, alignmentOf(type, linkage.model));
  scope.addresses.set(variable, address);
  const steps = wholeSteps(scope, () => firstSteps(scope, address, type, initializer, at));
  scope.destroyed[scope.destroyed.length - 1]?.steps.push(...cleanupSteps(scope, variable, address));
  if (variable !== scope.resultVariable)
    scope.destroyed[scope.destroyed.length - 1]?.steps.push(
      ...destroySteps(scope, address, type, at).reverse(),
    );
  return [`fresh(${address},${size})`, ...steps, ""].join(";");
}

/** The name of a local in the generated code, declared once. */
export function ownName(scope: FunctionScope, variable: Variable): string {
  const known = scope.names.get(variable);
  if (known !== undefined) return known;
  const name = scope.nameFor(variable);
  scope.declared.push(name);
  return name;
}

function declareScalar(scope: FunctionScope, variable: Variable): string {
  const { initializer, type } = variable;
  const name = ownName(scope, variable);
  const shape = shapeOf(type, scope.linkage.model);
  if (initializer === undefined || shape === undefined) {
    scope.unsure.add(variable);
    return `${name}=undefined;`;
  }
  if (initializer.kind === "value")
    return `${name}=${wholeExpression(scope, () => valueAs(scope, initializer.value, shape))};`;
  // `int x{}`, `int *p = {0}`.
  const [only] = initializer.kind === "constructor" ? initializer.arguments : [];
  if (initializer.kind === "constructor" && only !== undefined)
    return `${name}=${wholeExpression(scope, () => valueAs(scope, only, shape))};`;
  const [entry] = initializer.kind === "aggregate" ? initializer.entries : [];
  if (entry?.initializer.kind === "value") {
    const { value } = entry.initializer;
    return `${name}=${wholeExpression(scope, () => valueAs(scope, value, shape))};`;
  }
  return `${name}=${shape.kind === "wide" ? "0n" : "0"};`;
}

function declareStatic(scope: FunctionScope, variable: Variable): string {
  const { initializer, type, at } = variable;
  const address = String(scope.linkage.globalAddress(variable));
  const steps = wholeSteps(scope, () => firstSteps(scope, address, type, initializer, at));
  if (steps.length === 0) return "";
  const guard = `G[${scope.linkage.guardNumber(variable)}]`;
  return `if(!${guard}){${guard}=1;changed();${steps.join(";")};}`;
}

/** A range `for` as the plain one that it stands for. */
export function writtenOut(statement: Extract<TypedStatement, { kind: "range-for" }>): TypedStatement {
  const { at, variable, iteration, body } = statement;
  if (iteration === undefined) throw new CannotLower("a range `for` over this", at);
  const { variables, condition: test, step } = iteration;
  const element: TypedStatement = { kind: "variables", at, variables: [variable] };
  return {
    kind: "for",
    at,
    init: { kind: "variables", at, variables },
    condition: test,
    step,
    body: { kind: "block", at, statements: [element, body] },
  };
}

type Return = Extract<TypedStatement, { kind: "return" }>;

function lowerReturn(scope: FunctionScope, statement: Return): string {
  const ended = leaving(scope, 0);
  const { returns } = scope;
  const { value } = statement;
  const made = value && wholeExpression(scope, () => returnedValue(scope, value));
  if (made === undefined || returns.kind === "void")
    return `${made === undefined ? "" : `${made};`}${ended}${leaveMark}return;`;
  const held = scope.temporary();
  return `${held}=${made};${ended}${leaveMark}return ${held};`;
}

function returnedValue(scope: FunctionScope, value: TypedExpression): string {
  const { returns, linkage } = scope;
  if (returns.kind === "reference") return bound(scope, value, returns.to);
  if (returns.kind === "record") return returnedObject(scope, ofClass(value, returns.record));
  const shape = shapeOf(returns, linkage.model);
  return shape === undefined || shape.kind === "none" || shapeAt(scope, value).kind === "object"
    ? lowerValue(scope, value)
    : valueAs(scope, value, shape);
}

/** The result, made where the caller wants it; a local object that ends here is moved (C++11 12.8p32). */
function returnedObject(scope: FunctionScope, value: TypedExpression): string {
  if (value.kind !== "variable") return objectAt(scope, "result", value);
  const { variable } = value;
  if (variable === scope.resultVariable) return "result";
  return endsWithFunction(scope, variable)
    ? copied(scope, "result", value, "ends")
    : objectAt(scope, "result", value);
}
