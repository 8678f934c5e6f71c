import type { RawNode } from "../grammar/raw-nodes.ts";
import { childOf, type Reading } from "./reading.ts";

/** Adjacent string literals, each as written. */
export function stringParts(reading: Reading, node: RawNode): readonly string[] {
  const parts: string[] = [];
  for (let index = node.first; index < node.end; index += 1) {
    if (reading.tokens[index]?.kind === "string") parts.push(reading.text(index));
  }
  return parts;
}

export interface AssemblyText {
  /** The template, its literals joined, without quotes and with escapes as written. */
  readonly text: string;
  readonly operands: boolean;
}

/** `asm ("..." : ...)`; the grammar sees the strings alone. */
export function assemblyOf(reading: Reading, node: RawNode): AssemblyText {
  const code = childOf(node, "assembly_code");
  if (code === undefined) return { text: "", operands: false };
  const text = stringParts(reading, code)
    .map((part) => part.slice(part.indexOf('"') + 1, part.lastIndexOf('"')))
    .join("");
  return { text, operands: reading.text(code.end) !== ")" };
}
