import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Expression, Statement } from "../nodes.ts";
import { expressionOf } from "./expressions.ts";
import { childOf, type Reading } from "./reading.ts";

/** `case 1:` or `default:` without the statement it labels. */
export type Label = { readonly first: number; readonly end: number } & (
  | { readonly kind: "case"; readonly value: Expression; readonly upTo: Expression | undefined }
  | { readonly kind: "default" }
);

/** The label of a case and the statements that the grammar put behind it. */
export function casesOf(reading: Reading, node: RawNode): { label: Label; rest: readonly RawNode[] } {
  const colon = node.children.findIndex((child) => child.type === ":");
  const place = { first: node.first, end: node.children[colon]?.end ?? node.end };
  const rest = node.children.slice(colon + 1);
  const value = childOf(node, "value");
  if (value === undefined) return { label: { ...place, kind: "default" }, rest };
  // A range is shown to the grammar as `1 || 3`.
  const operator = childOf(value, "operator");
  const isRange = value.type === "binary_expression" && reading.text(operator?.first ?? -1) === "...";
  const low = isRange ? childOf(value, "left") : value;
  const high = isRange ? childOf(value, "right") : undefined;
  return {
    label: {
      ...place,
      kind: "case",
      value: expressionOf(reading, low ?? value),
      upTo: high === undefined ? undefined : expressionOf(reading, high),
    },
    rest,
  };
}

/** The statement under its labels, the first one outermost. */
export function labelled(labels: readonly Label[], statement: Statement | undefined): Statement {
  let body = statement;
  for (let index = labels.length - 1; index >= 0; index -= 1) {
    const label = labels[index];
    if (label === undefined) continue;
    body = { ...label, end: body?.end ?? label.end, body };
  }
  return body ?? { kind: "empty", first: 0, end: 0 };
}
