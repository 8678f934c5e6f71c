import type { CastStyle } from "../syntax/nodes.ts";
import { pointerTo, unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import type { At, ConversionReason, TypedExpression } from "./nodes.ts";

/** The type of what is not understood. */
export const unknownType: Type = { kind: "unknown", name: "" };

export function integerNode(at: At, value: bigint, type: Type): TypedExpression {
  return { kind: "integer", at, type, lvalue: false, value };
}

export function convertNode(
  operand: TypedExpression,
  type: Type,
  reason: ConversionReason,
  style?: CastStyle,
): TypedExpression {
  return { kind: "convert", at: operand.at, type, lvalue: false, operand, reason, style };
}

/** An expression whose shape is known and whose meaning is not. */
export function unresolved(
  at: At,
  name: string,
  form: "name" | "call" | "other",
  operands: readonly TypedExpression[],
  what: string,
): TypedExpression {
  return { kind: "unresolved", at, type: unknownType, lvalue: false, name, form, operands, what };
}

/** What a call of a function that returns this type is beside its type (C++11 5.2.2p10). */
export function categoryOf(returns: Type): { readonly lvalue: boolean; readonly xvalue?: true } {
  if (returns.kind !== "reference") return { lvalue: false };
  return returns.rvalue && returns.to.kind !== "function" ? { lvalue: true, xvalue: true } : { lvalue: true };
}

/** The category of a part of an object, or of the object seen as its base. */
export function categoryOfPart({ lvalue, xvalue }: TypedExpression): {
  readonly lvalue: boolean;
  readonly xvalue?: true;
} {
  return xvalue === true ? { lvalue, xvalue } : { lvalue };
}

/** What an expression is called in a message: the name of what it stands for, or nothing. */
export function writtenName(expression: TypedExpression): string {
  switch (expression.kind) {
    case "variable":
      return expression.variable.name;
    case "function":
      return expression.function.name;
    case "unresolved":
      return expression.name;
    case "member": {
      const object = writtenName(expression.object);
      return object === "" ? expression.field.name : `${object}.${expression.field.name}`;
    }
    case "dereference":
    case "convert":
      return writtenName(expression.operand);
    default:
      return "";
  }
}

/** The value of an expression: arrays and functions become pointers (C11 6.3.2.1p3, p4). */
export function decayed(expression: TypedExpression): TypedExpression {
  const { type } = expression;
  if (type.kind === "array") return convertNode(expression, pointerTo(type.of), "decay");
  if (type.kind === "function") return convertNode(expression, pointerTo(type), "decay");
  return expression;
}

/** The type of an expression's value: without qualifiers, arrays and functions as pointers. */
export function valueType(expression: TypedExpression): Type {
  const { type } = expression;
  if (type.kind === "array") return pointerTo(type.of);
  return type.kind === "function" ? pointerTo(type) : unqualified(type);
}
