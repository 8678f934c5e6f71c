import type {
  FunctionSymbol,
  TypedExpression,
  TypedInitializer,
  TypedStatement,
  Variable,
} from "../../reader/typed/nodes.ts";
import { expressionsOf, type Visitor, walkExpression, walkStatement } from "../../reader/typed/walk.ts";
import type { Field, Type } from "../../reader/types/types.ts";
import { endingOf, mayHaveEnding } from "./endings.ts";
import type { Linkage } from "./linkage.ts";

/** What a piece of code itself writes, calls and hands on, without going into the functions it calls. */
export interface DirectEffects {
  /** Variables written, or whose address is given away for writing. */
  readonly variables: ReadonlySet<Variable>;
  /** Members written, of whatever object. */
  readonly fields: ReadonlySet<Field>;
  readonly calls: ReadonlySet<FunctionSymbol>;
  /** Local variables at whose end something may be called. */
  readonly ending: ReadonlySet<Variable>;
  /** Functions used as values, with the name of the function they are given to ("" for none). */
  readonly callbacks: ReadonlyMap<FunctionSymbol, string>;
}

/** The same with all that the called functions do. */
export interface Effects {
  readonly variables: ReadonlySet<Variable>;
  readonly fields: ReadonlySet<Field>;
}

interface Collected {
  readonly variables: Set<Variable>;
  readonly fields: Set<Field>;
  readonly calls: Set<FunctionSymbol>;
  readonly ending: Set<Variable>;
  readonly callbacks: Map<FunctionSymbol, string>;
}

const ofCode = new WeakMap<object, DirectEffects>();

function collected(): Collected {
  return {
    variables: new Set(),
    fields: new Set(),
    calls: new Set(),
    ending: new Set(),
    callbacks: new Map(),
  };
}

/** Direct effects of a statement or expression; kept with the node, which never changes. */
export function directEffects(code: TypedStatement | TypedExpression): DirectEffects {
  let effects = ofCode.get(code);
  if (effects === undefined) {
    const into = collected();
    const visitor = collecting(into);
    if (isStatement(code)) walkStatement(code, visitor);
    else walkExpression(code, visitor);
    effects = into;
    ofCode.set(code, effects);
  }
  return effects;
}

const statementKinds: ReadonlySet<string> = new Set([
  "block",
  "expression",
  "variables",
  "if",
  "while",
  "do",
  "for",
  "range-for",
  "switch",
  "case",
  "default",
  "label",
  "goto",
  "break",
  "continue",
  "return",
  "assembly",
  "empty",
  "not-understood",
]);

function isStatement(code: TypedStatement | TypedExpression): code is TypedStatement {
  return statementKinds.has(code.kind);
}

/** Direct effects of a function's body; empty where it has none. */
export function functionEffects(symbol: FunctionSymbol, linkage: Linkage): DirectEffects {
  const definition = linkage.definitionOf(symbol);
  if (definition === undefined) return nothing;
  if (definition.memberInitializers.length === 0) return directEffects(definition.body);
  let effects = ofCode.get(definition);
  if (effects === undefined) {
    const into = collected();
    const visitor = collecting(into);
    for (const { initializer } of definition.memberInitializers) {
      collectConstructor(initializer, into);
      for (const expression of expressionsOf(initializer)) walkExpression(expression, visitor);
    }
    walkStatement(definition.body, visitor);
    effects = into;
    ofCode.set(definition, effects);
  }
  return effects;
}

const nothing: DirectEffects = collected();

/** Effects of code together with those of everything it calls; local variables of the latter are their own. */
export function allEffects(parts: readonly DirectEffects[], linkage: Linkage): Effects {
  const variables = new Set<Variable>();
  const fields = new Set<Field>();
  const called = new Set<FunctionSymbol>();
  for (const part of parts) {
    for (const variable of part.variables) variables.add(linkage.canonical(variable));
    for (const field of part.fields) fields.add(linkage.canonicalField(field));
    for (const symbol of calledBy(part, linkage)) called.add(symbol);
  }
  for (const symbol of reachedFrom(called, linkage)) {
    const effects = functionEffects(symbol, linkage);
    for (const variable of effects.variables)
      if (outlivesCalls(variable)) variables.add(linkage.canonical(variable));
    for (const field of effects.fields) fields.add(linkage.canonicalField(field));
  }
  return { variables, fields };
}

/** Functions that a piece of code calls itself, also by letting variables end. */
export function calledBy({ calls, ending }: DirectEffects, linkage: Linkage): readonly FunctionSymbol[] {
  if (ending.size === 0) return [...calls];
  const endings = [...ending].map((variable) => endingOf(variable, linkage));
  return [...calls, ...endings.filter((symbol) => symbol !== undefined)];
}

export function outlivesCalls({ storage }: Variable): boolean {
  return storage !== "local" && storage !== "parameter";
}

/** All functions that these lead to, themselves included. */
export function reachedFrom(roots: Iterable<FunctionSymbol>, linkage: Linkage): Set<FunctionSymbol> {
  const reached = new Set<FunctionSymbol>();
  const open = [...roots];
  for (let symbol = open.pop(); symbol !== undefined; symbol = open.pop()) {
    if (reached.has(symbol)) continue;
    reached.add(symbol);
    open.push(...calledBy(functionEffects(symbol, linkage), linkage));
  }
  return reached;
}

function collecting(into: Collected): Visitor {
  return {
    expression(expression) {
      collect(expression, into);
      return true;
    },
    statement(statement) {
      if (statement.kind !== "variables") return true;
      for (const variable of statement.variables) {
        if (variable.initializer !== undefined) collectConstructor(variable.initializer, into);
        if (mayHaveEnding(variable)) into.ending.add(variable);
      }
      return true;
    },
  };
}

function collect(expression: TypedExpression, into: Collected): void {
  switch (expression.kind) {
    case "assign":
    case "compound-assign":
      written(expression.target, into);
      return;
    case "update":
      written(expression.operand, into);
      return;
    case "address":
      if (isWritable(expression.type)) written(expression.operand, into);
      return;
    case "convert":
      if (expression.reason === "decay" && isWritable(expression.type)) written(expression.operand, into);
      return;
    case "call":
      collectCall(expression, into);
      return;
    case "method-call":
      into.calls.add(expression.method);
      collectArguments(expression.arguments, expression.method.type.parameters, expression.method.name, into);
      return;
    case "construct":
      collectConstructor(expression.initializer, into);
      return;
    default:
      return;
  }
}

function collectConstructor(initializer: TypedInitializer, into: Collected): void {
  if (initializer.kind === "constructor" && initializer.constructor !== undefined) {
    into.calls.add(initializer.constructor);
  }
}

function isWritable(type: Type): boolean {
  return type.kind === "pointer" && type.to.const !== true && type.to.kind !== "function";
}

function collectCall(expression: Extract<TypedExpression, { kind: "call" }>, into: Collected): void {
  const { callee } = expression;
  const symbol = callee.kind === "function" ? callee.function : undefined;
  if (symbol !== undefined) into.calls.add(symbol);
  const parameters = callee.type.kind === "function" ? callee.type.parameters : [];
  collectArguments(expression.arguments, parameters, symbol?.name ?? "", into);
}

function collectArguments(
  given: readonly TypedExpression[],
  parameters: readonly Type[],
  callee: string,
  into: Collected,
): void {
  for (const [index, argument] of given.entries()) {
    const parameter = parameters[index];
    if (parameter?.kind === "reference" && parameter.to.const !== true) written(argument, into);
    const symbol = functionIn(argument);
    if (symbol !== undefined) into.callbacks.set(symbol, callee);
  }
}

/** The function that an expression names as a value. */
function functionIn(expression: TypedExpression): FunctionSymbol | undefined {
  if (expression.kind === "function" || expression.kind === "lambda") return expression.function;
  if (expression.kind === "convert" || expression.kind === "address") return functionIn(expression.operand);
  return undefined;
}

/** Marks the object that an lvalue names, or the member of it that is named last. */
function written(target: TypedExpression, into: Collected): void {
  switch (target.kind) {
    case "variable":
      into.variables.add(target.variable);
      return;
    case "member":
      into.fields.add(target.field);
      return;
    case "index":
      written(target.array, into);
      return;
    case "convert":
      written(target.operand, into);
      return;
    case "conditional":
      written(target.then, into);
      written(target.otherwise, into);
      return;
    case "comma":
      written(target.right, into);
      return;
    default:
      return;
  }
}
