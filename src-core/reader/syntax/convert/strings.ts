import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Reading } from "./reading.ts";

/** Adjacent string literals, each as written. */
export function stringParts(reading: Reading, node: RawNode): readonly string[] {
  const parts: string[] = [];
  for (let index = node.first; index < node.end; index += 1) {
    if (reading.tokens[index]?.kind === "string") parts.push(reading.text(index));
  }
  return parts;
}
