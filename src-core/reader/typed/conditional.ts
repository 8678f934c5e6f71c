import type { Expression } from "../syntax/nodes.ts";
import { sameType, sameUnqualified } from "../types/compare.ts";
import type { Type } from "../types/types.ts";
import { classConversion } from "./class-conversions.ts";
import { commonType } from "./common-type.ts";
import type { Context } from "./context.ts";
import { convertTo, isNullConstant, toBase } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { categoryOfPart, unknownType, unresolved, valueType } from "./make.ts";
import type { At, TypedExpression } from "./nodes.ts";
import { condition } from "./truth.ts";

type ConditionalSyntax = Extract<Expression, { kind: "conditional" }>;

export function typeConditional(context: Context, syntax: ConditionalSyntax, at: At): TypedExpression {
  const test = typeExpression(context, syntax.condition);
  const [first, second] = meeting(
    context,
    syntax.then === undefined ? test : typeExpression(context, syntax.then),
    typeExpression(context, syntax.otherwise),
  );
  const shared = branchType(context, first, second);
  if (shared === undefined) {
    return unresolved(at, "", "other", [test, first, second], "branches of types that do not go together");
  }
  const asIs =
    context.unit.language === "c++" && isSameKind(first, second) && sameType(first.type, second.type);
  const then = asIs ? first : convertTo(context, first, shared, "arithmetic");
  const otherwise = asIs ? second : convertTo(context, second, shared, "arithmetic");
  return {
    kind: "conditional",
    at,
    type: asIs ? first.type : shared,
    ...(asIs ? categoryOfPart(first) : { lvalue: false }),
    condition: condition(context, test),
    then,
    otherwise,
  };
}

/** Both have an address, and either both are about to end or none is (C++11 5.16p4). */
function isSameKind(first: TypedExpression, second: TypedExpression): boolean {
  return first.lvalue && second.lvalue && first.xvalue === second.xvalue;
}

/** Where one branch is an object of a class, the one that converts to the other's type does (C++11 5.16p3). */
function meeting(
  context: Context,
  then: TypedExpression,
  otherwise: TypedExpression,
): readonly [TypedExpression, TypedExpression] {
  const [a, b] = [valueType(then), valueType(otherwise)];
  if ((a.kind !== "record" && b.kind !== "record") || sameUnqualified(a, b)) return [then, otherwise];
  const converted = (value: TypedExpression, type: Type): TypedExpression | undefined =>
    toBase(value, type) ?? classConversion(context, value, type, "arithmetic");
  const [toB, toA] = [converted(then, b), converted(otherwise, a)];
  if (toB !== undefined && toA === undefined) return [toB, otherwise];
  if (toA !== undefined && toB === undefined) return [then, toA];
  return [then, otherwise];
}

/** The type in which both branches of `?:` meet (C11 6.5.15p5, p6). */
function branchType(context: Context, then: TypedExpression, otherwise: TypedExpression): Type | undefined {
  const a = valueType(then);
  const b = valueType(otherwise);
  if (sameUnqualified(a, b) && (a.kind !== "integer" || context.unit.language === "c++")) return a;
  if (a.kind === "unknown" || b.kind === "unknown") return unknownType;
  const arithmeticType = commonType(context, then, otherwise);
  if (arithmeticType !== undefined) return arithmeticType;
  if (a.kind === "void" || b.kind === "void") return context.unit.types.void;
  if (a.kind === "pointer" && isNullConstant(otherwise)) return a;
  if (b.kind === "pointer" && isNullConstant(then)) return b;
  if (a.kind === "pointer" && b.kind === "pointer") {
    return b.to.kind === "void" || (a.to.const === undefined && b.to.const === true) ? b : a;
  }
  return sameUnqualified(a, b) ? a : undefined;
}
