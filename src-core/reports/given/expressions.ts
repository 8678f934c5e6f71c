import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { operandsOf, walkExpression } from "../../reader/typed/walk.ts";
import { withoutConversions } from "../../reader/typed/without-conversions.ts";

export type Call = Extract<TypedExpression, { kind: "call" | "method-call" }>;

/** Two expressions that say the same, conversions aside. */
export function isSame(one: TypedExpression, other: TypedExpression): boolean {
  const [a, b] = [withoutConversions(one), withoutConversions(other)];
  if (a.kind === "variable") return b.kind === "variable" && a.variable === b.variable;
  if (a.kind === "integer") return b.kind === "integer" && a.value === b.value;
  if (a.kind === "member" && (b.kind !== "member" || a.field !== b.field)) return false;
  if ("operator" in a && (!("operator" in b) || a.operator !== b.operator)) return false;
  const [inside, others] = [operandsOf(a), operandsOf(b)];
  const isLeaf = inside.length === 0 && a.kind !== "this";
  return (
    a.kind === b.kind &&
    !isLeaf &&
    inside.length === others.length &&
    inside.every((operand, index) => {
      const also = others[index];
      return also !== undefined && isSame(operand, also);
    })
  );
}

/** Whether something is another once it was done. */
export function changesSomething(expression: TypedExpression): boolean {
  let changes = false;
  walkExpression(expression, {
    expression({ kind }) {
      changes ||= kind === "assign" || kind === "compound-assign" || kind === "update";
      changes ||= kind === "call" || kind === "method-call";
      return !changes;
    },
  });
  return changes;
}
