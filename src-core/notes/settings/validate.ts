import type { Node } from "jsonc-parser";
import { suggestionFor } from "../suggestion.ts";
import { repairedClock } from "../values/clock.ts";
import {
  propertySchema,
  type SchemaArray,
  type SchemaInteger,
  type SchemaNode,
  type SchemaObject,
  type SchemaString,
} from "./schema-node.ts";
import type { SettingsProblem } from "./settings.ts";

/** Collects what is wrong and which nodes to leave out when the settings are read. */
export interface Faults {
  readonly file: string;
  readonly problems: SettingsProblem[];
  readonly nodes: Set<Node>;
}

/** Checks `node` against `schema`. `path` is what a message calls it, such as `board.clock`. */
export function validate(node: Node, schema: SchemaNode, path: string, faults: Faults): void {
  switch (schema.type) {
    case "object":
      validateObject(node, schema, path, faults);
      break;
    case "array":
      validateArray(node, schema, path, faults);
      break;
    case "string":
      validateString(node, schema, path, faults);
      break;
    case "integer":
      validateInteger(node, schema, path, faults);
  }
}

function validateObject(node: Node, schema: SchemaObject, path: string, faults: Faults): void {
  if (node.type !== "object") {
    report(faults, node, `${subject(path)}expected an object \`{...}\``);
    return;
  }
  const seen = new Map<string, Node>();
  for (const property of node.children ?? []) {
    const [key, value] = property.children ?? [];
    const name: unknown = key?.value;
    if (key === undefined || typeof name !== "string") continue;
    if (seen.has(name)) {
      report(faults, key, `${subject(path)}\`${name}\` is said twice`);
      faults.nodes.add(property);
      continue;
    }
    seen.set(name, property);
    const inner = propertySchema(schema, name);
    if (inner === undefined) {
      reportUnknown(faults, key, name, schema, path);
      faults.nodes.add(property);
    } else if (schema.propertyNames !== undefined && !matches(schema.propertyNames.pattern, name)) {
      report(faults, key, `${subject(path)}${schema.propertyNames.patternErrorMessage}, not \`${name}\``);
      faults.nodes.add(property);
    } else if (value !== undefined) {
      validate(value, inner, path === "" ? name : `${path}.${name}`, faults);
    }
  }
  reportRivals(schema, seen, path, faults);
}

function reportUnknown(faults: Faults, key: Node, name: string, schema: SchemaObject, path: string): void {
  const { phrase, best } = suggestionFor(name, Object.keys(schema.properties ?? {}));
  const suggestion = best === undefined ? undefined : JSON.stringify(best);
  report(faults, key, `${subject(path)}there is no \`${name}\`${phrase}`, suggestion);
}

function reportRivals(
  schema: SchemaObject,
  seen: ReadonlyMap<string, Node>,
  path: string,
  faults: Faults,
): void {
  const rivals = schema.not?.required ?? [];
  if (rivals.length === 0 || !rivals.every((name) => seen.has(name))) return;
  const last = seen.get(rivals.at(-1) ?? "");
  if (last === undefined) return;
  const names = rivals.map((name) => `\`${name}\``).join(" and ");
  report(faults, last, `${subject(path)}${names} exclude each other: keep one of them`);
}

function validateArray(node: Node, schema: SchemaArray, path: string, faults: Faults): void {
  if (node.type !== "array") {
    const example = node.type === "string" ? `[${JSON.stringify(node.value)}]` : undefined;
    report(faults, node, `${subject(path)}expected a list \`[...]\``, example);
    return;
  }
  for (const [index, child] of (node.children ?? []).entries()) {
    validate(child, schema.items, `${path}[${index}]`, faults);
  }
}

function validateString(node: Node, schema: SchemaString, path: string, faults: Faults): void {
  const value: unknown = node.value;
  if (node.type !== "string" || typeof value !== "string") {
    const text = typeof value === "number" || typeof value === "boolean" ? String(value) : undefined;
    const best = text === undefined ? undefined : repaired(text, schema);
    const suggestion = best === undefined ? undefined : JSON.stringify(best);
    const expected = schema.patternErrorMessage ?? expectedText(schema);
    report(faults, node, `${subject(path)}${expected}, in double quotes`, suggestion);
    return;
  }
  if (schema.enum !== undefined && !schema.enum.includes(value)) {
    const { phrase, best } = suggestionFor(value, schema.enum);
    const suggestion = best === undefined ? undefined : JSON.stringify(best);
    report(faults, node, `${subject(path)}\`${value}\` is not known${phrase}`, suggestion);
    return;
  }
  if (schema.pattern !== undefined && !matches(schema.pattern, value)) {
    const best = repaired(value, schema);
    const suggestion = best === undefined ? undefined : JSON.stringify(best);
    const meant = best === undefined ? "" : `; did you mean \`${best}\`?`;
    const expected = schema.patternErrorMessage ?? "this is not of the expected form";
    report(faults, node, `${subject(path)}${expected}, not \`${value}\`${meant}`, suggestion);
  }
}

/** Names that a message can hold; of more it gives a few for example. */
const mostNames = 12;

function expectedText({ enum: names }: SchemaString): string {
  if (names === undefined) return "expected text";
  const quoted = (some: readonly string[]) => some.map((name) => `"${name}"`).join(", ");
  if (names.length <= mostNames) return `expected one of ${quoted(names)}`;
  return `expected one of ${names.length} names, such as ${quoted(names.slice(0, 3))}`;
}

function validateInteger(node: Node, schema: SchemaInteger, path: string, faults: Faults): void {
  const { minimum, maximum } = schema;
  const value: unknown = node.value;
  const fits = (number: number) => Number.isInteger(number) && number >= minimum && number <= maximum;
  if (typeof value === "number" && fits(value)) return;
  const number = typeof value === "string" && /^\d+$/.test(value) ? Number(value) : undefined;
  const suggestion = number !== undefined && fits(number) ? String(number) : undefined;
  const unquoted = typeof value === "string" ? ", without quotes" : "";
  report(
    faults,
    node,
    `${subject(path)}expected a whole number from ${minimum} to ${maximum}${unquoted}`,
    suggestion,
  );
}

/** The value in another case or with its unit set right, where that makes it valid. */
function repaired(text: string, schema: SchemaString): string | undefined {
  const candidates = [text, text.toUpperCase(), text.toLowerCase(), repairedClock(text)];
  return candidates.find((candidate) => {
    if (candidate === undefined) return false;
    if (schema.enum !== undefined) return schema.enum.includes(candidate);
    return schema.pattern === undefined || matches(schema.pattern, candidate);
  });
}

function matches(pattern: string, text: string): boolean {
  return new RegExp(pattern).test(text);
}

function subject(path: string): string {
  return path === "" ? "" : `\`${path}\`: `;
}

function report(faults: Faults, node: Node, message: string, suggestion?: string): void {
  const span = { file: faults.file, start: node.offset, end: node.offset + node.length };
  faults.problems.push({ span, message, suggestion });
  faults.nodes.add(node);
}
