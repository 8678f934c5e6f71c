import type { Expression } from "../syntax/nodes.ts";
import { arithmeticTypeOf } from "../types/conversions.ts";
import { asOperand } from "./class-conversions.ts";
import { operatorCall } from "./class-operators.ts";
import type { Context } from "./context.ts";
import { promoted } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { unknownType } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";

function elementType(array: TypedExpression): TypedExpression["type"] | undefined {
  const { type } = array;
  if (type.kind === "array") return type.of;
  return type.kind === "pointer" ? type.to : undefined;
}

/** `a[i]`, in either order (C11 6.5.2.1p2); the array stays an array, so that its length is known. */
export function typeIndex(
  context: Context,
  syntax: Extract<Expression, { kind: "index" }>,
  at: At,
): TypedExpression {
  const first = typeExpression(context, syntax.array);
  const second = typeExpression(context, syntax.index);
  const called = operatorCall(context, "[]", [first, second], at);
  if (called !== undefined) return called;
  const [left, right] = [asOperand(context, first), asOperand(context, second)];
  const isTurned = elementType(left) === undefined && arithmeticTypeOf(left.type) !== undefined;
  const [array, index] = isTurned ? [right, left] : [left, right];
  const type = elementType(array) ?? unknownType;
  return { kind: "index", at, type, lvalue: true, array, index: promoted(context, index) };
}
