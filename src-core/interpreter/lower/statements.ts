import type { TypedExpression, TypedStatement, Variable } from "../../reader/typed/nodes.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import { copied } from "./calls.ts";
import { destroySteps } from "./destructors.ts";
import { firstSteps } from "./initializers.ts";
import { bound } from "./places.ts";
import { CannotLower, type FunctionScope, type Jump } from "./scope.ts";
import { shapeOf } from "./shape.ts";
import { isPlainSwitch, lowerSwitch } from "./switches.ts";
import { condition, lowerValue, shapeAt, valueAs } from "./values.ts";

/** Stands for giving back the frame, until its size is known. */
export const leaveMark = "@leave@";

/** JavaScript for statements; what cannot be run becomes a stop with its place. */
export function lowerStatements(scope: FunctionScope, statements: readonly TypedStatement[]): string {
  return statements.map((statement) => lowerStatement(scope, statement)).join("");
}

export function lowerStatement(scope: FunctionScope, statement: TypedStatement): string {
  return orStop(scope, () => lowerAny(scope, statement));
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
      return block(scope, statement.statements);
    case "expression":
      return `${lowerValue(scope, statement.expression)};`;
    case "variables":
      return statement.variables.map((variable) => declare(scope, variable)).join("");
    case "if": {
      if (statement.init !== undefined) {
        const { init } = statement;
        return block(scope, [init, { ...statement, init: undefined }]);
      }
      const otherwise =
        statement.otherwise === undefined ? "" : `else{${lowerStatement(scope, statement.otherwise)}}`;
      return `if(${condition(scope, statement.condition)}){${lowerStatement(scope, statement.then)}}${otherwise}`;
    }
    case "while": {
      const head =
        statement.declared === undefined
          ? ""
          : `${lowerStatement(scope, statement.declared)}if(!${condition(scope, statement.condition)})break;`;
      const test = statement.declared === undefined ? condition(scope, statement.condition) : "true";
      return loop(
        scope,
        () => `while(${test}){${head}${tick(scope, statement)}${lowerStatement(scope, statement.body)}}`,
      );
    }
    case "do":
      return loop(
        scope,
        () =>
          `do{${tick(scope, statement)}${lowerStatement(scope, statement.body)}}while(${condition(scope, statement.condition)});`,
      );
    case "for": {
      if (statement.init !== undefined)
        return block(scope, [statement.init, { ...statement, init: undefined }]);
      const test = statement.condition === undefined ? "" : condition(scope, statement.condition);
      return loop(scope, () => {
        const body = lowerStatement(scope, statement.body);
        // Behind the body, which declares what a condition declared.
        const step = statement.step === undefined ? "" : lowerValue(scope, statement.step);
        return `for(;${test};${step}){${tick(scope, statement)}${body}}`;
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
      return jump(target);
    }
    case "break":
      return leaving(scope, scope.breakDepth) + jumpOut(scope.breakTo, "break");
    case "continue":
      return leaving(scope, scope.continueDepth) + jumpOut(scope.continueTo, "continue");
    case "return":
      return lowerReturn(scope, statement.value);
    case "assembly":
      return assembly(scope, statement);
    case "empty":
      return "";
    case "not-understood":
      throw new CannotLower(statement.what, at);
  }
}

/** Counts a turn of a loop. */
export function tick(scope: FunctionScope, { at }: TypedStatement): string {
  return `if(--C[0]<0)spent(${scope.place(at)});`;
}

export function jump(target: number): string {
  return `{pc=${target};continue L;}`;
}

function jumpOut(target: Jump, own: "break" | "continue"): string {
  return typeof target === "number" ? jump(target) : `${own};`;
}

/** Ends the objects of the blocks that are left, the innermost first. */
function leaving(scope: FunctionScope, depth: number): string {
  return scope.destroyed
    .slice(depth)
    .flatMap((steps) => [...steps])
    .reverse()
    .map((step) => `${step};`)
    .join("");
}

function block(scope: FunctionScope, statements: readonly TypedStatement[]): string {
  scope.destroyed.push([]);
  const body = lowerStatements(scope, statements);
  const ended = leaving(scope, scope.destroyed.length - 1);
  scope.destroyed.pop();
  return `{${body}${ended}}`;
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
    return `${name}=${bound(scope, initializer.value, type.to)};`;
  }
  if (shape.kind !== "object" && !scope.inMemory.has(variable)) return declareScalar(scope, variable);
  const size = sizeOf(type, linkage.model);
  if (size === undefined) throw new CannotLower(`\`${variable.name}\`, whose size is not known`, at);
  const address = scope.addresses.get(variable) ?? scope.room(size, alignmentOf(type, linkage.model));
  scope.addresses.set(variable, address);
  const steps = firstSteps(scope, address, type, initializer, at);
  const ended = destroySteps(scope, address, type, at);
  scope.destroyed[scope.destroyed.length - 1]?.push(...[...ended].reverse());
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
  if (initializer.kind === "value") return `${name}=${valueAs(scope, initializer.value, shape)};`;
  // `int x{}`, `int *p = {0}`.
  const [only] = initializer.kind === "constructor" ? initializer.arguments : [];
  if (initializer.kind === "constructor" && only !== undefined)
    return `${name}=${valueAs(scope, only, shape)};`;
  const [entry] = initializer.kind === "aggregate" ? initializer.entries : [];
  if (entry?.initializer.kind === "value")
    return `${name}=${valueAs(scope, entry.initializer.value, shape)};`;
  return `${name}=${shape.kind === "wide" ? "0n" : "0"};`;
}

function declareStatic(scope: FunctionScope, variable: Variable): string {
  const { initializer, type, at } = variable;
  const address = String(scope.linkage.globalAddress(variable));
  const steps = firstSteps(scope, address, type, initializer, at);
  if (steps.length === 0) return "";
  const guard = `G[${scope.linkage.guardNumber(variable)}]`;
  return `if(!${guard}){${guard}=1;${steps.join(";")};}`;
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

function lowerReturn(scope: FunctionScope, value: TypedExpression | undefined): string {
  const ended = leaving(scope, 0);
  const { returns } = scope;
  if (value === undefined || returns.kind === "void") {
    return `${value === undefined ? "" : `${lowerValue(scope, value)};`}${ended}${leaveMark}return;`;
  }
  const held = scope.temporary();
  return `${held}=${returnedValue(scope, value)};${ended}${leaveMark}return ${held};`;
}

function returnedValue(scope: FunctionScope, value: TypedExpression): string {
  const { returns, linkage } = scope;
  if (returns.kind === "reference") return bound(scope, value, returns.to);
  if (returns.kind === "record") return copied(scope, "result", value);
  const shape = shapeOf(returns, linkage.model);
  return shape === undefined || shapeAt(scope, value).kind === "object"
    ? lowerValue(scope, value)
    : valueAs(scope, value, shape);
}

/** Instructions that change nothing that the program computes with: the machine is told of them. */
const harmless = /^\s*((nop|sei|cli|wdr|sleep)\b[\s;]*)*$/i;

function assembly(scope: FunctionScope, statement: Extract<TypedStatement, { kind: "assembly" }>): string {
  const text = statement.text.replace(/\\[nt]/g, "\n");
  if (!harmless.test(text)) throw new CannotLower(`inline assembly \`${statement.text}\``, statement.at);
  const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
  return words
    .map((word) => `instruction(${scope.linkage.textNumber(word)},${scope.place(statement.at)});`)
    .join("");
}
