import type { Expression } from "../syntax/nodes.ts";
import { referred, unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import type { Context } from "./context.ts";
import { castTo } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { initializerFrom, initializerOf, isAggregate } from "./initializers.ts";
import { convertNode, unresolved } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { typeOfTypeName } from "./specifiers.ts";
import { completed } from "./variables.ts";

type CastSyntax = Extract<Expression, { kind: "cast" }>;

export function typeCast(context: Context, syntax: CastSyntax, at: At): TypedExpression {
  const type = typeOfTypeName(context, syntax.type);
  const [only] = syntax.operands;
  if (only === undefined || syntax.operands.length > 1 || type.kind === "record") {
    if (syntax.style === "functional" || only === undefined || syntax.operands.length > 1) {
      return construct(context, syntax, type, at);
    }
  }
  if (only === undefined) return unresolved(at, "", "other", [], "a cast of nothing");
  if (only.kind === "list") return compoundOf(context, type, only, at);
  const operand = typeExpression(context, only, type);
  if (type.kind === "unknown") return { ...convertNode(operand, type, "explicit", syntax.style), at };
  const cast = castTo(context, operand, type, syntax.style);
  return { ...cast, at };
}

/** `T(a, b)`, `T{}`: a new object, or the zero of a scalar type. */
function construct(context: Context, syntax: CastSyntax, type: Type, at: At): TypedExpression {
  const target = unqualified(referred(type));
  const operands = syntax.operands.map((operand) => typeExpression(context, operand));
  if (isAggregate(context, target) && operands.length > 0) {
    const entries = syntax.operands.map((value) => ({
      designators: [],
      value,
      first: value.first,
      end: value.end,
    }));
    const only = operands.length === 1 ? operands[0] : undefined;
    if (only?.type.kind !== "record") {
      return compoundOf(context, target, { kind: "list", entries, first: syntax.first, end: syntax.end }, at);
    }
  }
  const initializer = initializerOf(context, target, operands, at);
  if (initializer?.kind === "value")
    return { ...convertNode(initializer.value, target, "explicit", "functional"), at };
  if (target.kind === "unknown") {
    return unresolved(at, target.name, "call", operands, `\`${target.name}\` is a type not known`);
  }
  return {
    kind: "construct",
    at,
    type: target,
    lvalue: false,
    initializer: initializer ?? { kind: "constructor", at, constructor: undefined, arguments: operands },
  };
}

function compoundOf(context: Context, type: Type, list: Expression, at: At): TypedExpression {
  const initializer = initializerFrom(context, type, list);
  const whole = completed(type, initializer);
  if (initializer.kind === "value" && whole.kind !== "array") return { ...initializer.value, at };
  return { kind: "construct", at, type: whole, lvalue: context.unit.language === "c", initializer };
}

/** `(T){ ... }` (C11 6.5.2.5). */
export function typeCompound(
  context: Context,
  syntax: Extract<Expression, { kind: "compound" }>,
  at: At,
): TypedExpression {
  return compoundOf(context, typeOfTypeName(context, syntax.type), syntax.list, at);
}
