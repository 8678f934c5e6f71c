import { arithmeticTypeOf, usualArithmetic } from "../types/conversions.ts";
import type { ArithmeticType } from "../types/derive.ts";
import type { Context } from "./context.ts";
import { promotedType } from "./convert.ts";
import type { TypedExpression } from "./nodes.ts";

/** The type in which two arithmetic operands meet (C11 6.3.1.8); undefined where one is no such operand. */
export function commonType(
  context: Context,
  left: TypedExpression,
  right: TypedExpression,
): ArithmeticType | undefined {
  const a = promotedType(context, left);
  const b = promotedType(context, right);
  const leftType = a && arithmeticTypeOf(a);
  const rightType = b && arithmeticTypeOf(b);
  if (leftType === undefined || rightType === undefined) return undefined;
  return usualArithmetic(leftType, rightType, context.unit.model);
}
