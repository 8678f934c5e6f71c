import type { TypedExpression } from "./nodes.ts";

/** What was written, below the conversions that the language puts around it. */
export function withoutConversions(expression: TypedExpression): TypedExpression {
  return expression.kind === "convert" ? withoutConversions(expression.operand) : expression;
}
