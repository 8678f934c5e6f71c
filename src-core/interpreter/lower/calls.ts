import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import { calledType } from "../../reader/types/derive.ts";
import type { FunctionType, Type } from "../../reader/types/types.ts";
import { needsDestroying } from "./destructors.ts";
import { lowerFurther } from "./further-arguments.ts";
import { addressOf, bound, roomFor } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { lowerValue, shapeAt, valueAs } from "./values.ts";

type Call = Extract<TypedExpression, { kind: "call" }>;
type MethodCall = Extract<TypedExpression, { kind: "method-call" }>;

/** A call; its value is the result's, for objects their address, for references the address of what is meant. */
export function lowerCall(scope: FunctionScope, call: Call): string {
  const { callee } = call;
  const direct = directCallee(callee);
  const type = calledType(callee.type);
  if (type === undefined) throw new CannotLower("a call of what is no function", call.at);
  const target =
    direct === undefined
      ? `pointed(${lowerValue(scope, callee)},${scope.place(call.at)})`
      : `F[${scope.linkage.functionNumber(direct)}]`;
  return called(scope, target, type, [], call.arguments, call, direct);
}

export function lowerMethodCall(scope: FunctionScope, call: MethodCall): string {
  const { method, object } = call;
  const self = addressOf(scope, object);
  if (!call.virtual || isQualified(call)) {
    return called(
      scope,
      `F[${scope.linkage.functionNumber(method)}]`,
      method.type,
      [self],
      call.arguments,
      call,
      method,
    );
  }
  const held = scope.temporary();
  const target = `virtual(${scope.linkage.methodNumber(method)},${held}=${self},${scope.place(call.at)})`;
  return called(
    scope,
    target,
    method.type,
    [`adjusted(${scope.linkage.methodNumber(method)},${held})`],
    call.arguments,
    call,
  );
}

/** An object that is no reference and no target of a pointer is of just its own class. */
function isQualified({ object }: MethodCall): boolean {
  return object.kind === "variable" && object.variable.type.kind === "record";
}

function directCallee(callee: TypedExpression): FunctionSymbol | undefined {
  if (callee.kind === "function") return callee.function;
  if (callee.kind === "convert" && callee.reason === "decay") return directCallee(callee.operand);
  if (callee.kind === "dereference" && callee.type.kind === "function") return directCallee(callee.operand);
  return undefined;
}

function called(
  scope: FunctionScope,
  target: string,
  type: FunctionType,
  first: readonly string[],
  given: readonly TypedExpression[],
  call: TypedExpression,
  direct?: FunctionSymbol,
): string {
  const { returns } = type;
  if (given.length < type.parameters.length) throw new CannotLower("a call with too few arguments", call.at);
  const named = type.variadic ? given.slice(0, type.parameters.length) : given;
  const parameters = named.map((argument, index) => argumentValue(scope, argument, type.parameters[index]));
  const further = type.variadic ? lowerFurther(scope, given.slice(named.length), call) : [];
  refuseDestroyed(scope, call);
  const returned = returns.kind === "record" ? roomFor(scope, returns, call) : undefined;
  const extra = direct !== undefined && scope.linkage.isReplaced(direct) ? callPlace(scope, given) : [];
  const all = [...(returned === undefined ? [] : [returned]), ...first, ...parameters, ...further, ...extra];
  const code = `${target}(${all.join(",")})`;
  return returned === undefined ? code : `(${code},${returned})`;
}

/** What a function run in place of another is told of the call. */
function callPlace(scope: FunctionScope, given: readonly TypedExpression[]): string[] {
  const last = given.at(-1);
  if (last === undefined) return [];
  const object = readObject(last);
  return [String(scope.place(last.at)), object === undefined ? "0" : addressOf(scope, object)];
}

/** The object whose value an argument is, where its address can be computed twice and it is in memory. */
function readObject(argument: TypedExpression): TypedExpression | undefined {
  if (argument.kind === "convert" && argument.type.kind === "integer") return readObject(argument.operand);
  if (argument.kind !== "index" && argument.kind !== "member" && argument.kind !== "dereference")
    return undefined;
  let changes = false;
  walkExpression(argument, {
    expression: ({ kind }) => {
      if (kind === "assign" || kind === "compound-assign" || kind === "update") changes = true;
      if (kind === "call" || kind === "method-call" || kind === "new") changes = true;
      return !changes;
    },
  });
  return changes || (argument.kind === "member" && argument.field.bitWidth !== undefined)
    ? undefined
    : argument;
}

/** An argument as the callee takes it: objects as the address of a copy, references as addresses. */
export function argumentValue(
  scope: FunctionScope,
  argument: TypedExpression,
  type: Type | undefined,
): string {
  if (type?.kind === "reference") return bound(scope, argument, type.to);
  const shape = type === undefined ? shapeAt(scope, argument) : shapeOf(type, scope.linkage.model);
  if (shape === undefined) throw new CannotLower("an argument whose type is not known", argument.at);
  if (shape.kind !== "object") return valueAs(scope, argument, shape);
  if (needsDestroying(scope, argument.type))
    throw new CannotLower("an object with a destructor as an argument", argument.at);
  if (isNew(argument)) return lowerValue(scope, argument);
  const room = roomFor(scope, argument.type, argument);
  return copied(scope, room, argument);
}

/** Whether an object is nobody else's: what assignments, conditions and `va_arg` give in C lies where it lay before. */
function isNew({ kind, lvalue }: TypedExpression): boolean {
  return !lvalue && (kind === "call" || kind === "method-call" || kind === "construct" || kind === "lambda");
}

/** Builds a copy of an object at an address; through the class's own copy constructor if there is one. */
export function copied(scope: FunctionScope, to: string, from: TypedExpression): string {
  const shape = shapeAt(scope, from);
  scope.kept = from;
  const source = lowerValue(scope, from);
  const record = shape.kind === "object" ? shape.record : undefined;
  const maker =
    record && from.lvalue ? scope.linkage.classOf(record)?.functions.find(isCopyConstructor) : undefined;
  if (maker === undefined) {
    if (record && from.lvalue && record.fields.some((field) => copiesItself(scope, field.type)))
      throw new CannotLower("a copy of an object whose members have copy constructors", from.at);
    return stored(shape, to, source, scope.place(from.at));
  }
  return `(F[${scope.linkage.functionNumber(maker)}](${to},${source}),${to})`;
}

function copiesItself(scope: FunctionScope, type: Type): boolean {
  if (type.kind === "array") return copiesItself(scope, type.of);
  if (type.kind !== "record") return false;
  const own = scope.linkage.classOf(type.record)?.functions.some(isCopyConstructor) === true;
  return own || type.record.fields.some((field) => copiesItself(scope, field.type));
}

/** A temporary object that has a destructor can only be run where it becomes a named object. */
export function refuseDestroyed(scope: FunctionScope, expression: TypedExpression): void {
  if (expression.lvalue || scope.kept === expression || !needsDestroying(scope, expression.type)) return;
  throw new CannotLower("a temporary object with a destructor", expression.at);
}

function isCopyConstructor({ special, memberOf, type }: FunctionSymbol): boolean {
  const [only] = type.parameters;
  if (special !== "constructor" || type.parameters.length !== 1 || only?.kind !== "reference") return false;
  return !only.rvalue && only.to.kind === "record" && only.to.record === memberOf;
}
