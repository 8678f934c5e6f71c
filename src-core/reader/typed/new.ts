import type { Expression } from "../syntax/nodes.ts";
import { arrayOf, pointerTo } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import { typeExpression } from "./expressions.ts";
import { initializerFrom, initializerOf, isAggregate } from "./initializers.ts";
import { decayed, unresolved } from "./make.ts";
import type { At, TypedExpression, TypedInitializer } from "./nodes.ts";
import { typeOfTypeName } from "./specifiers.ts";

type NewSyntax = Extract<Expression, { kind: "new" }>;

/** `new T(a)`, `new T[n]{a, b}`: a pointer to what is made. */
export function typeNew(context: Context, syntax: NewSyntax, at: At): TypedExpression {
  const type = typeOfTypeName(context, syntax.type);
  const length = syntax.length && typeExpression(context, syntax.length);
  if (length !== undefined && syntax.form === "parentheses" && syntax.arguments.length > 0)
    return unresolved(at, "", "other", [length], "`new` of an array with first values in parentheses");
  const made = type.kind === "array" ? type.of : type;
  return {
    kind: "new",
    at,
    type: pointerTo(made),
    lvalue: false,
    placement: syntax.placement && decayed(typeExpression(context, syntax.placement)),
    initializer: initializerFor(context, syntax, made, at),
    length,
  };
}

function initializerFor(
  context: Context,
  syntax: NewSyntax,
  made: Type,
  at: At,
): TypedInitializer | undefined {
  if (syntax.form === "none")
    return made.kind === "record" ? initializerOf(context, made, [], at) : undefined;
  if (syntax.arguments.length === 0) return valueInitializer(context, made, at);
  const isArray = syntax.length !== undefined;
  if (isArray || (syntax.form === "braces" && isAggregate(context, made))) {
    const { first, end } = syntax;
    const entries = syntax.arguments.map((value) => ({
      designators: [],
      value,
      first: value.first,
      end: value.end,
    }));
    const type = isArray ? arrayOf(made, entries.length) : made;
    return initializerFrom(context, type, { kind: "list", entries, first, end });
  }
  const given = syntax.arguments.map((argument) => typeExpression(context, argument));
  return initializerOf(context, made, given, at);
}

/** `T()`: zero, and what its constructor makes of it (C++11 8.5p7). */
function valueInitializer(context: Context, made: Type, at: At): TypedInitializer | undefined {
  const initializer = initializerOf(context, made, [], at);
  if (made.kind !== "record") return initializer;
  const value: TypedExpression = {
    kind: "construct",
    at,
    type: made,
    lvalue: false,
    initializer: initializer ?? { kind: "constructor", at, constructor: undefined, arguments: [] },
  };
  return { kind: "value", at, value };
}

export function typeDelete(
  context: Context,
  syntax: Extract<Expression, { kind: "delete" }>,
  at: At,
): TypedExpression {
  const operand = decayed(typeExpression(context, syntax.operand));
  return { kind: "delete", at, type: context.unit.types.void, lvalue: false, operand, array: syntax.array };
}
