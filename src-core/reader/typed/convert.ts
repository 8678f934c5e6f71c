import { sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf, integerTypeOf, promote, promoteBitField } from "../types/conversions.ts";
import { pointerTo, qualifiersOf, qualify, unqualified } from "../types/derive.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { asOperand, classConversion } from "./class-conversions.ts";
import type { Context } from "./context.ts";
import { categoryOf, categoryOfPart, convertNode, decayed } from "./make.ts";
import type { ConversionReason, TypedExpression } from "./nodes.ts";

/**
 * The expression converted to a type, with what that takes written out: decay, promotion, conversion to a base
 * class, converting constructors and conversion functions. Where either type is unknown nothing is done.
 */
export function convertTo(
  context: Context,
  expression: TypedExpression,
  type: Type,
  reason: ConversionReason,
): TypedExpression {
  if (type.kind === "reference") return bindReference(context, expression, type, reason);
  const target = unqualified(type);
  if (target.kind === "unknown" || expression.type.kind === "unknown") return expression;
  if (target.kind === "array" || target.kind === "function") return expression;
  const value = decayed(expression);
  if (sameUnqualified(value.type, target)) return value;
  if (value.type.kind === "record" || target.kind === "record") {
    return toBase(value, target) ?? classConversion(context, value, target, reason) ?? value;
  }
  if (value.type.kind === "pointer" && target.kind === "pointer") {
    return pointerToBase(value, target) ?? convertNode(value, target, reason);
  }
  return convertNode(value, target, reason);
}

/** A reference binds to the object itself where it can, else to a converted temporary (C++11 8.5.3). */
function bindReference(
  context: Context,
  expression: TypedExpression,
  type: Extract<Type, { kind: "reference" }>,
  reason: ConversionReason,
): TypedExpression {
  const { to } = type;
  if (to.kind === "unknown" || expression.type.kind === "unknown") return expression;
  if (sameUnqualified(expression.type, to)) return expression;
  if (to.kind === "array" || to.kind === "function") return expression;
  return toBase(expression, to) ?? convertTo(context, expression, to, reason);
}

/** The way from a class to one of its bases: the classes on it, the base itself last. */
export function basePath(from: RecordDeclaration, to: RecordDeclaration): RecordDeclaration[] | undefined {
  for (const { record } of from.bases) {
    if (record === to) return [record];
    const rest = basePath(record, to);
    if (rest !== undefined) return [record, ...rest];
  }
  return undefined;
}

/** An object of a class as an object of its base, or undefined where the types are not so related. */
export function toBase(expression: TypedExpression, target: Type): TypedExpression | undefined {
  if (expression.type.kind !== "record" || target.kind !== "record") return undefined;
  const path = basePath(expression.type.record, target.record);
  if (path === undefined) return undefined;
  return path.reduce<TypedExpression>((object, record) => {
    const type = qualify({ kind: "record", record }, qualifiersOf(object.type));
    return { ...convertNode(object, type, "base"), ...categoryOfPart(object) };
  }, expression);
}

function pointerToBase(
  expression: TypedExpression,
  target: Extract<Type, { kind: "pointer" }>,
): TypedExpression | undefined {
  const { type } = expression;
  if (type.kind !== "pointer" || type.to.kind !== "record" || target.to.kind !== "record") return undefined;
  const path = basePath(type.to.record, target.to.record);
  if (path === undefined) return undefined;
  const { to } = type;
  return path.reduce<TypedExpression>((pointer, record) => {
    const base = qualify({ kind: "record", record }, qualifiersOf(to));
    return convertNode(pointer, pointerTo(base), "base");
  }, expression);
}

/** A conversion the source spells out as a cast; a node stands even where the type stays the same. */
export function castTo(
  context: Context,
  expression: TypedExpression,
  type: Type,
  style: Extract<TypedExpression, { kind: "convert" }>["style"],
): TypedExpression {
  if (type.kind === "reference") {
    const bound = toBase(expression, type.to) ?? convertNode(expression, type.to, "explicit", style);
    return { ...bound, ...categoryOf(type) };
  }
  const target = unqualified(type);
  const value = decayed(expression);
  if (value.type.kind === "record" || target.kind === "record") {
    return (
      toBase(value, target) ??
      classConversion(context, value, target, "explicit") ??
      convertNode(value, target, "explicit", style)
    );
  }
  return convertNode(value, target, "explicit", style);
}

/** The operand after integer promotion; floating, pointer and other operands as their values. */
export function promoted(context: Context, expression: TypedExpression): TypedExpression {
  const value = decayed(asOperand(context, expression));
  const type = promotedType(context, value);
  if (type === undefined || sameUnqualified(value.type, type)) return value;
  return convertNode(value, type, "promotion");
}

/** The arithmetic type an operand has after promotion; undefined where it is no arithmetic operand. */
export function promotedType(context: Context, value: TypedExpression): Type | undefined {
  const { model } = context.unit;
  const type = arithmeticTypeOf(value.type);
  if (type === undefined || type.kind === "floating")
    return type === undefined ? undefined : unqualified(value.type);
  const width = bitFieldWidth(value);
  return width === undefined
    ? promote(type, model)
    : promoteBitField(type, width, model, context.unit.language);
}

/** The width of a bit-field, or of the value that one was given. */
function bitFieldWidth(value: TypedExpression): number | undefined {
  switch (value.kind) {
    case "member":
      return value.field.bitWidth;
    case "assign":
    case "compound-assign":
      return bitFieldWidth(value.target);
    case "update":
      return bitFieldWidth(value.operand);
    case "comma":
      return bitFieldWidth(value.right);
    default:
      return undefined;
  }
}

/** Default argument promotions, for `...` (C11 6.5.2.2p6). */
export function promotedArgument(context: Context, expression: TypedExpression): TypedExpression {
  const value = promoted(context, expression);
  const { types } = context.unit;
  if (value.type.kind === "floating" && value.type.rank === "float") {
    return convertNode(value, types.double, "argument");
  }
  return value;
}

/** Whether a null pointer constant (C11 6.3.2.3p3): `0`, `nullptr`, or `(void *)0`. */
export function isNullConstant(expression: TypedExpression): boolean {
  if (expression.kind === "integer") return expression.value === 0n;
  if (expression.kind !== "convert" || !isNullConstant(expression.operand)) return false;
  const { type } = expression;
  return integerTypeOf(type) !== undefined || (type.kind === "pointer" && type.to.kind === "void");
}
