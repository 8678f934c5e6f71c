import type { TypedExpression, Variable } from "../../reader/typed/nodes.ts";
import { operandsOf } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";
import type { Field } from "../../reader/types/types.ts";
import type { Linkage } from "../walk/linkage.ts";

/** What an expression names: a variable, or a member of whatever object. */
export type Named = Variable | Field;

/** The one that stands for all declarations of what an expression names, conversions aside. */
export function namedBy(expression: TypedExpression, linkage: Linkage): Named | undefined {
  const inner = withoutConversions(expression);
  if (inner.kind === "variable") return linkage.canonical(inner.variable);
  return inner.kind === "member" ? linkage.canonicalField(inner.field) : undefined;
}

/** What an expression counts up or down, or makes of its own old value. */
export function countedBy(expression: TypedExpression, linkage: Linkage): Named | undefined {
  switch (expression.kind) {
    case "update":
      return namedBy(expression.operand, linkage);
    case "compound-assign":
      return namedBy(expression.target, linkage);
    case "assign": {
      const named = namedBy(expression.target, linkage);
      return named !== undefined && names(expression.value, named, linkage) ? named : undefined;
    }
    default:
      return undefined;
  }
}

function names(expression: TypedExpression, named: Named, linkage: Linkage): boolean {
  if (namedBy(expression, linkage) === named) return true;
  return operandsOf(expression).some((operand) => names(operand, named, linkage));
}
