import type { Fix, Span } from "../../finding.ts";
import { replaced } from "./source-text.ts";

/** Names of the integers without a sign that movements are kept in, and of those that have one. */
const signedNames: Readonly<Record<string, string>> = {
  uint8_t: "int8_t",
  byte: "int8_t",
  uint16_t: "int16_t",
  word: "int16_t",
};

/** Changes that give one variable or cast of a function a type with a sign. */
export function* signedTypes(body: Span, text: string): Generator<Fix> {
  const code = text.slice(body.start, body.end);
  for (const match of code.matchAll(/\b(?:uint8_t|uint16_t|byte|word)\b/g)) {
    const [name] = match;
    const signed = signedNames[name];
    if (signed === undefined) continue;
    const start = body.start + match.index;
    const span = { file: body.file, start, end: start + name.length };
    yield { title: `Write ${signed} instead of ${name}`, edits: [replaced(span, signed)] };
  }
}
