import type { Expression } from "../syntax/nodes.ts";
import { arithmeticTypeOf } from "../types/conversions.ts";
import { unqualified } from "../types/derive.ts";
import type { Type } from "../types/types.ts";
import { asOperand } from "./class-conversions.ts";
import { operatorCall } from "./class-operators.ts";
import { commonType } from "./common-type.ts";
import type { Context } from "./context.ts";
import { convertTo, isNullConstant, promoted } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { decayed, unknownType } from "./make.ts";
import type { ArithmeticOperator, At, ComparisonOperator, TypedExpression } from "./nodes.ts";
import { condition, truthType } from "./truth.ts";

type BinarySyntax = Extract<Expression, { kind: "binary" }>;

export function typeBinary(context: Context, syntax: BinarySyntax, at: At): TypedExpression {
  const left = typeExpression(context, syntax.left);
  const right = typeExpression(context, syntax.right);
  return binary(context, syntax.operator, left, right, at);
}

/** A binary operator on typed operands; the usual conversions are written out. */
export function binary(
  context: Context,
  operator: BinarySyntax["operator"],
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const called = operatorCall(context, operator, [left, right], at);
  if (called !== undefined) return called;
  const value = (operand: TypedExpression): TypedExpression => decayed(asOperand(context, operand));
  switch (operator) {
    case ",":
      return {
        kind: "comma",
        at,
        type: right.type,
        lvalue: right.lvalue && context.unit.language === "c++",
        left,
        right,
      };
    case "&&":
    case "||":
      return {
        kind: "logical",
        at,
        type: truthType(context),
        lvalue: false,
        operator,
        left: condition(context, left),
        right: condition(context, right),
      };
    case "<":
    case ">":
    case "<=":
    case ">=":
    case "==":
    case "!=":
      return compare(context, operator, value(left), value(right), at);
    case "<<":
    case ">>":
      return shift(operator, promoted(context, left), promoted(context, right), at);
    default:
      return arithmetic(context, operator, value(left), value(right), at);
  }
}

function shift(
  operator: "<<" | ">>",
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const isKnown = arithmeticTypeOf(left.type) !== undefined;
  const type = isKnown ? unqualified(left.type) : unknownType;
  return { kind: "arithmetic", at, type, lvalue: false, operator, left, right };
}

function arithmetic(
  context: Context,
  operator: ArithmeticOperator,
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const type = commonType(context, left, right);
  if (type !== undefined) {
    return {
      kind: "arithmetic",
      at,
      type,
      lvalue: false,
      operator,
      left: convertTo(context, left, type, "arithmetic"),
      right: convertTo(context, right, type, "arithmetic"),
    };
  }
  if (operator === "+" || operator === "-") {
    const pointer = pointerArithmetic(context, operator, left, right, at);
    if (pointer !== undefined) return pointer;
  }
  return { kind: "arithmetic", at, type: unknownType, lvalue: false, operator, left, right };
}

function pointerArithmetic(
  context: Context,
  operator: "+" | "-",
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression | undefined {
  if (left.type.kind === "pointer" && right.type.kind === "pointer") {
    if (operator === "+") return undefined;
    return {
      kind: "pointer-difference",
      at,
      type: context.unit.types.difference,
      lvalue: false,
      left,
      right,
    };
  }
  if (left.type.kind === "pointer" && arithmeticTypeOf(right.type)?.kind === "integer") {
    const offset = promoted(context, right);
    return {
      kind: "pointer-offset",
      at,
      type: unqualified(left.type),
      lvalue: false,
      operator,
      pointer: left,
      offset,
    };
  }
  if (operator === "+" && right.type.kind === "pointer" && arithmeticTypeOf(left.type)?.kind === "integer") {
    const offset = promoted(context, left);
    return {
      kind: "pointer-offset",
      at,
      type: unqualified(right.type),
      lvalue: false,
      operator,
      pointer: right,
      offset,
    };
  }
  return undefined;
}

function compare(
  context: Context,
  operator: ComparisonOperator,
  left: TypedExpression,
  right: TypedExpression,
  at: At,
): TypedExpression {
  const type = truthType(context);
  const shared = commonType(context, left, right) ?? pointerCommon(left, right);
  if (shared === undefined) return { kind: "compare", at, type, lvalue: false, operator, left, right };
  return {
    kind: "compare",
    at,
    type,
    lvalue: false,
    operator,
    left: convertTo(context, left, shared, "arithmetic"),
    right: convertTo(context, right, shared, "arithmetic"),
  };
}

/** The type in which two pointers, or a pointer and a null pointer constant, meet. */
function pointerCommon(left: TypedExpression, right: TypedExpression): Type | undefined {
  if (left.type.kind === "pointer" && (right.type.kind !== "pointer" || isNullConstant(right)))
    return left.type;
  if (right.type.kind === "pointer" && (left.type.kind !== "pointer" || isNullConstant(left)))
    return right.type;
  if (left.type.kind !== "pointer" || right.type.kind !== "pointer") return undefined;
  return right.type.to.kind === "void" ? right.type : left.type;
}
