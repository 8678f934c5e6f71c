import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";
import { calledType } from "../../reader/types/derive.ts";
import type { FunctionType, Type } from "../../reader/types/types.ts";
import { type CallOrder, hasEffects, inCallOrder } from "./call-order.ts";
import { destroySteps } from "./destructors.ts";
import { lowerFurther } from "./further-arguments.ts";
import { functionCode } from "./missing.ts";
import { objectAt } from "./objects.ts";
import { addressOf, bound, roomFor } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { shapeOf } from "./shape.ts";
import { remembered, temporaryObject } from "./temporaries.ts";
import { lowerValue, shapeAt, valueAs } from "./values.ts";

export type Call = Extract<TypedExpression, { kind: "call" | "method-call" }>;
type MethodCall = Extract<TypedExpression, { kind: "method-call" }>;

/** Why a call of the function that the reader takes for the one that may be meant is not run. */
export const unclearCall = "a call whose arguments no function of the name takes, as they are understood";

/** A call; its value is the result's, for objects their address, for references the address of what is meant. */
export function lowerCall(scope: FunctionScope, call: Call): string {
  return typeOfCalled(call).returns.kind === "record"
    ? temporaryObject(scope, call)
    : calling(scope, call, undefined);
}

/** A call that returns an object, which is made at this address; that is its value. */
export function callInto(scope: FunctionScope, call: Call, to: string): string {
  return `(${calling(scope, call, to)},${to})`;
}

function typeOfCalled(call: Call): FunctionType {
  const type = call.kind === "call" ? calledType(call.callee.type) : call.method.type;
  if (type === undefined) throw new CannotLower("a call of what is no function", call.at);
  return type;
}

function calling(scope: FunctionScope, call: Call, result: string | undefined): string {
  const type = typeOfCalled(call);
  const given = call.arguments;
  if (call.guessed === true) throw new CannotLower(unclearCall, call.at);
  if (given.length < type.parameters.length) throw new CannotLower("a call with too few arguments", call.at);
  const first = result === undefined ? [] : [result];
  const order: CallOrder = { given: call.kind === "call" ? given : [call.object, ...given], braces: false };
  if (call.kind === "method-call") return callingMethod(scope, call, first, order);
  const { callee } = call;
  const direct = directCallee(callee);
  const target =
    direct === undefined
      ? `pointed(${lowerValue(scope, callee)},${scope.place(call.at)})`
      : functionCode(scope, direct, call.at);
  return inCallOrder(scope, target, [...first, ...argumentValues(scope, call, type, direct)], order);
}

function callingMethod(
  scope: FunctionScope,
  call: MethodCall,
  first: readonly string[],
  order: CallOrder,
): string {
  const { method, object } = call;
  const self = addressOf(scope, object);
  if (method.special === "destructor") {
    if (call.virtual && !isQualified(call)) return `(destroyed(${self},${scope.place(call.at)}),0)`;
    const ended = scope.temporary();
    return `(${[`${ended}=${self}`, ...destroySteps(scope, ended, object.type, call.at), "0"].join(",")})`;
  }
  const isDirect = !call.virtual || isQualified(call);
  const given = argumentValues(scope, call, method.type, method);
  if (isDirect)
    return inCallOrder(scope, functionCode(scope, method, call.at), [...first, self, ...given], order);
  const held = scope.temporary();
  const number = scope.linkage.methodNumber(method);
  return inCallOrder(
    scope,
    `virtual(${number},${held},${scope.place(call.at)})`,
    [...first, `(${held}=${self},adjusted(${number},${held}))`, ...given],
    order,
    "arguments-first",
  );
}

/** The arguments that the callee names, those behind `...`, and what a function run in its place is told. */
function argumentValues(
  scope: FunctionScope,
  call: Call,
  { parameters, variadic }: FunctionType,
  direct: FunctionSymbol | undefined,
): string[] {
  const given = call.arguments;
  const named = variadic ? given.slice(0, parameters.length) : given;
  const values = named.map((argument, index) => argumentValue(scope, argument, parameters[index]));
  const further = variadic ? lowerFurther(scope, given.slice(named.length), call) : [];
  const extra = !variadic && scope.linkage.isReplaced(direct) ? callPlace(scope, given) : [];
  return [...values, ...further, ...extra];
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
  return hasEffects(argument) || (argument.kind === "member" && argument.field.bitWidth !== undefined)
    ? undefined
    : argument;
}

function whatOf(argument: TypedExpression): string {
  return argument.kind === "unresolved" ? argument.what : "an argument whose type is not known";
}

/** An argument as the callee takes it: objects as the address of one made for it, references as addresses. */
export function argumentValue(
  scope: FunctionScope,
  argument: TypedExpression,
  type: Type | undefined,
): string {
  if (argument.type.kind === "unknown") throw new CannotLower(whatOf(argument), argument.at);
  if (type?.kind === "reference") return bound(scope, argument, type.to);
  const shape = type === undefined ? shapeAt(scope, argument) : shapeOf(type, scope.linkage.model);
  if (shape === undefined) throw new CannotLower("an argument whose type is not known", argument.at);
  if (shape.kind !== "object") return valueAs(scope, argument, shape);
  // The caller ends it, with the full expression (as avr-gcc's calling convention has it).
  const room = roomFor(scope, argument.type, argument);
  return remembered(scope, objectAt(scope, room, argument), argument.type, argument.at);
}
