import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Expression } from "../nodes.ts";
import { nameOf } from "./names.ts";
import type { Reading } from "./reading.ts";
import { stringParts } from "./strings.ts";

/**
 * What the grammar sees as a literal: one, or a name that was shown as a number so that it is taken for a value.
 */
export function literalOf(reading: Reading, node: RawNode): Expression {
  const { first, end } = node;
  const token = reading.tokens[first];
  const text = reading.text(first);
  if (reading.presentation.typeArguments.has(first)) {
    return { kind: "not-understood", first, end, what: "type as an argument" };
  }
  switch (token?.kind) {
    case "string":
      return { kind: "string", first, end, parts: stringParts(reading, node) };
    case "character":
      return { kind: "character", first, end, text };
    case "number":
      return { kind: "number", first, end, text };
  }
  const { language } = reading.presentation;
  if (language === "c++") {
    if (text === "true" || text === "false") return { kind: "boolean", first, end, value: text === "true" };
    if (text === "nullptr") return { kind: "nullptr", first, end };
    if (text === "this") return { kind: "this", first, end };
  }
  return { kind: "name", first, end, name: nameOf(reading, node) };
}
