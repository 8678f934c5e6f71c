import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Linkage } from "../walk/linkage.ts";

/** What an expression names: a variable, or a member of whatever object. */
export type Named = Variable | Field;

export function bare(expression: TypedExpression): TypedExpression {
  return expression.kind === "convert" ? bare(expression.operand) : expression;
}

/** The one that stands for all declarations of what an expression names, conversions aside. */
export function namedBy(expression: TypedExpression, linkage: Linkage): Named | undefined {
  const inner = bare(expression);
  if (inner.kind === "variable") return linkage.canonical(inner.variable);
  return inner.kind === "member" ? linkage.canonicalField(inner.field) : undefined;
}
