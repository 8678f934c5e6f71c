import type { Expression } from "../syntax/nodes.ts";
import { pointerTo } from "../types/derive.ts";
import type { Context } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { initializerOf } from "./initializers.ts";
import { decayed, unresolved } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { typeOfTypeName } from "./specifiers.ts";

/** `new T(a)`, `new T[n]`: a pointer to what is made. */
export function typeNew(
  context: Context,
  syntax: Extract<Expression, { kind: "new" }>,
  at: At,
): TypedExpression {
  const type = typeOfTypeName(context, syntax.type);
  const given = syntax.arguments.map((argument) => typeExpression(context, argument));
  const length = syntax.length && typeExpression(context, syntax.length);
  if (length !== undefined && given.length > 0)
    return unresolved(at, "", "other", [length, ...given], "`new` of an array with first values");
  const made = type.kind === "array" ? type.of : type;
  return {
    kind: "new",
    at,
    type: pointerTo(made),
    lvalue: false,
    initializer:
      given.length === 0 && made.kind !== "record" ? undefined : initializerOf(context, made, given, at),
    length,
  };
}

export function typeDelete(
  context: Context,
  syntax: Extract<Expression, { kind: "delete" }>,
  at: At,
): TypedExpression {
  const operand = decayed(typeExpression(context, syntax.operand));
  return { kind: "delete", at, type: context.unit.types.void, lvalue: false, operand, array: syntax.array };
}
