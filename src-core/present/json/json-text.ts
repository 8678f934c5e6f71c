/**
 * JSON for people and machines: indented, but what holds nothing but plain values stands on one line, so that a list of a
 * hundred thousand records has as many lines and not ten times as many.
 */
export function jsonText(value: unknown, indent = ""): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const parts = Array.isArray(value) ? value.map((each) => ["", each] as const) : entriesOf(value);
  const [open, close] = Array.isArray(value) ? ["[", "]"] : ["{", "}"];
  if (parts.length === 0) return `${open}${close}`;
  const named = (name: string, text: string): string => (name === "" ? text : `${name}: ${text}`);
  if (parts.every(([, each]) => typeof each !== "object" || each === null || isPlainList(each))) {
    return `${open}${parts.map(([name, each]) => named(name, plainText(each))).join(", ")}${close}`;
  }
  const inner = `${indent}  `;
  const lines = parts.map(([name, each]) => `${inner}${named(name, jsonText(each, inner))}`);
  return `${open}\n${lines.join(",\n")}\n${indent}${close}`;
}

/** As `JSON.stringify` has it: what is undefined is left out. */
function entriesOf(value: object): readonly (readonly [name: string, value: unknown])[] {
  return Object.entries(value)
    .filter(([, each]) => each !== undefined)
    .map(([name, each]) => [JSON.stringify(name), each] as const);
}

/** So short a list of numbers or texts that it reads as one value, such as the bytes of a report. */
function isPlainList(value: unknown): boolean {
  return (
    Array.isArray(value) &&
    value.length <= 8 &&
    value.every((each) => typeof each !== "object" || each === null)
  );
}

function plainText(value: unknown): string {
  return Array.isArray(value) ? `[${value.map(plainText).join(", ")}]` : (JSON.stringify(value) ?? "null");
}
