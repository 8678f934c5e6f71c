import type { FunctionSymbol, TypedExpression } from "./nodes.ts";

/** The function that a call names; undefined for a call through a pointer, and for what is no call. */
export function functionCalled(expression: TypedExpression): FunctionSymbol | undefined {
  if (expression.kind === "method-call") return expression.method;
  return expression.kind === "call" && expression.callee.kind === "function"
    ? expression.callee.function
    : undefined;
}
