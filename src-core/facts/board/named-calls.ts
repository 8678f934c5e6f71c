import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { type Call, callOf } from "./calls.ts";

/** A call by name, of a function that is declared or of one that is not. */
export interface NamedCall extends Pick<Call, "arguments" | "expression"> {
  readonly name: string;
}

export function namedCallOf(expression: TypedExpression): NamedCall | undefined {
  const call = callOf(expression);
  if (call !== undefined) return { name: call.callee.name, arguments: call.arguments, expression };
  if (expression.kind !== "unresolved" || expression.form !== "call") return undefined;
  return { name: expression.name, arguments: expression.operands, expression };
}
