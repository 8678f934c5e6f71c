import { closureName } from "../../reader/typed/closures.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { Type } from "../../reader/types/types.ts";
import { forgetPointee } from "./assignments.ts";
import { contentsOf } from "./contents.ts";
import type { OutsideCall } from "./events.ts";
import { evaluate, isWhole } from "./expressions.ts";
import { type Calling, callFunction, callOutside, notFollowed } from "./inlining.ts";
import { heldValue } from "./load-store.ts";
import { placeNamedBy } from "./lvalues.ts";
import type { Machine } from "./machine.ts";
import type { Place } from "./places.ts";
import { givenBy, tracesOf, unknown, unknownOf } from "./unknowns.ts";
import type { Value } from "./values.ts";

type CallExpression = Extract<TypedExpression, { kind: "call" }>;
type MethodCall = Extract<TypedExpression, { kind: "method-call" }>;

export function evaluateCall(machine: Machine, expression: CallExpression): Value {
  const { callee } = expression;
  const called: Value =
    callee.kind === "function"
      ? { kind: "function", function: callee.function, from: callee }
      : evaluate(machine, callee);
  const parameters = called.kind === "function" ? called.function.type.parameters : [];
  const calling: Calling = {
    at: expression.at,
    type: expression.type,
    expressions: expression.arguments,
    arguments: evaluateArguments(machine, expression.arguments, parameters),
    object: undefined,
  };
  if (called.kind === "function")
    return callFunction(machine, called.function, calling, called.function.name);
  machine.emit(notFollowed(expression.at, "called through an unknown pointer"));
  for (const argument of calling.arguments) forgetPointee(machine, argument);
  return unknownOf(expression.type, expression, tracesOf(called));
}

export function evaluateMethodCall(machine: Machine, expression: MethodCall): Value {
  const { method } = expression;
  const object =
    method.memberOf?.name === closureName
      ? aroundLambda(machine, expression.object)
      : (placeNamedBy(machine, expression.object) ?? objectValue(machine, expression.object));
  const calling: Calling = {
    at: expression.at,
    type: expression.type,
    expressions: expression.arguments,
    arguments: evaluateArguments(machine, expression.arguments, method.type.parameters),
    object,
  };
  return callFunction(machine, method, calling, `${objectName(expression.object)}${method.name}`);
}

/** `this` in a lambda is that of the function around it, which is known while that function runs. */
function aroundLambda(machine: Machine, lambda: TypedExpression): Place | undefined {
  const isOwn =
    lambda.kind === "lambda" || (lambda.kind === "variable" && lambda.variable.storage === "local");
  return isOwn ? machine.frame?.self : undefined;
}

function objectValue(machine: Machine, expression: TypedExpression): Place | undefined {
  if (expression.kind !== "call" && expression.kind !== "method-call" && expression.kind !== "construct")
    return undefined;
  const value = evaluate(machine, expression);
  return value.kind === "address" ? value.place : undefined;
}

/** `Serial.` for the name of a call, as it is written. */
function objectName(object: TypedExpression): string {
  switch (object.kind) {
    case "variable":
      return `${object.variable.name}.`;
    case "member":
      return object.object.kind === "dereference" && object.object.operand.kind === "this"
        ? `${object.field.name}.`
        : `${objectName(object.object)}${object.field.name}.`;
    case "dereference":
      return object.operand.kind === "this" ? "" : objectName(object.operand);
    case "convert":
    case "address":
      return objectName(object.operand);
    case "index":
      return objectName(object.array);
    case "unresolved":
      return object.name === "" ? "" : `${object.name}.`;
    default:
      return "";
  }
}

/** A call of something that is declared nowhere, or another form that is not understood. */
export function evaluateUnresolved(
  machine: Machine,
  expression: Extract<TypedExpression, { kind: "unresolved" }>,
): Value {
  if (expression.form === "name") {
    const place = placeNamedBy(machine, expression);
    if (place === undefined) return unknown(expression);
    return givenBy(heldValue(machine, place), expression);
  }
  const values = expression.operands.map((operand) => evaluate(machine, operand));
  if (expression.form !== "call") return unknown(expression);
  const call: OutsideCall = {
    kind: "outside-call",
    at: expression.at,
    name: expression.name,
    function: undefined,
    origin: "undeclared",
    object: undefined,
    arguments: values,
    expressions: expression.operands,
    contents: contentsOf(machine, values),
  };
  return callOutside(machine, call, expression.type, expression);
}

function evaluateArguments(
  machine: Machine,
  given: readonly TypedExpression[],
  parameters: readonly Type[],
): Value[] {
  return given.map((argument, index) => {
    const parameter = parameters[index];
    if (parameter?.kind !== "reference") return evaluate(machine, argument);
    return referenceTo(machine, argument);
  });
}

/** What a reference to this expression holds: the address of its object, or of a temporary with its value. */
export function referenceTo(machine: Machine, expression: TypedExpression): Value {
  const inner =
    expression.kind === "convert" && !isWhole(expression) ? undefined : placeNamedBy(machine, expression);
  if (inner !== undefined) return { kind: "address", place: inner, from: expression };
  if (expression.lvalue) return unknown(expression);
  const value = evaluate(machine, expression);
  if (isWhole(expression)) return value;
  const place = machine.memory.temporary(expression.type, machine.active.length);
  machine.memory.write(place, value);
  return { kind: "address", place, from: expression };
}
