import { getLocation, type Location, parseTree } from "jsonc-parser";
import type { Span } from "../../finding.ts";
import { nestsTooDeep } from "../settings/json-tree.ts";
import { ownStrokeNames } from "../settings/read-settings.ts";
import { settingsSchema } from "../settings/schema.ts";
import { propertySchema, type SchemaNode } from "../settings/schema-node.ts";
import { chipNamed } from "../values/chip.ts";
import type { Vocabulary } from "../vocabulary.ts";
import { type Completion, type Hover, type Proposal, placed } from "./completion.ts";

/** Keys and values that can be written at `offset` of an edgewise.json. Never throws. */
export function completeSettings(
  file: string,
  text: string,
  offset: number,
  vocabulary: Vocabulary,
): readonly Completion[] {
  const location = locate(text, offset);
  if (location === undefined) return [];
  const span = replacedSpan(file, location, offset);
  if (location.isAtPropertyKey) {
    const owner = schemaAt(location.path.slice(0, -1), text, vocabulary);
    const hasValue = /^\s*:/.test(text.slice(span.end));
    return owner === undefined ? [] : placed(keyProposals(owner, hasValue), span);
  }
  const schema = schemaAt(location.path, text, vocabulary);
  if (schema === undefined) return [];
  const isPin = schema.type === "string" && isPinPath(location.path);
  return placed(isPin ? pinProposals(text, vocabulary) : valueProposals(schema), span);
}

/** What the key or value under the cursor means. */
export function hoverSettings(
  file: string,
  text: string,
  offset: number,
  vocabulary: Vocabulary,
): Hover | undefined {
  const location = locate(text, offset);
  const node = location?.previousNode;
  if (location === undefined || node === undefined || offset < node.offset) return undefined;
  const schema = schemaAt(location.path, text, vocabulary);
  if (schema?.description === undefined) return undefined;
  const value: unknown = node.value;
  const index =
    schema.type === "string" && !location.isAtPropertyKey ? schema.enum?.indexOf(String(value)) : undefined;
  const meaning =
    schema.type === "string" && index !== undefined
      ? (schema.markdownEnumDescriptions ?? schema.enumDescriptions)?.[index]
      : undefined;
  const markdown =
    meaning === undefined ? schema.description : `**${value}**: ${meaning}\n\n${schema.description}`;
  return { markdown, span: { file, start: node.offset, end: node.offset + node.length } };
}

function locate(text: string, offset: number): Location | undefined {
  return nestsTooDeep(text) ? undefined : getLocation(text, offset);
}

/** The string, number or word that the cursor stands in, or the cursor itself. */
function replacedSpan(file: string, { previousNode }: Location, offset: number): Span {
  const inside =
    previousNode !== undefined &&
    previousNode.offset <= offset &&
    offset <= previousNode.offset + previousNode.length;
  if (!inside) return { file, start: offset, end: offset };
  return { file, start: previousNode.offset, end: previousNode.offset + previousNode.length };
}

function schemaAt(
  path: readonly (string | number)[],
  text: string,
  vocabulary: Vocabulary,
): SchemaNode | undefined {
  const root = parseTree(text);
  let schema: SchemaNode | undefined = settingsSchema(vocabulary, root && ownStrokeNames(root));
  for (const step of path) {
    if (schema?.type === "array") schema = schema.items;
    else if (schema?.type === "object") schema = propertySchema(schema, String(step));
    else return undefined;
  }
  return schema;
}

function keyProposals(owner: SchemaNode, hasValue: boolean): readonly Proposal[] {
  if (owner.type !== "object") return [];
  return Object.entries(owner.properties ?? {}).map(([name, schema]) => ({
    label: name,
    kind: "key",
    detail: schema.description ?? "",
    documentation: "",
    text: hasValue ? JSON.stringify(name) : `${JSON.stringify(name)}: ${emptyValue(schema)}`,
  }));
}

function emptyValue(schema: SchemaNode): string {
  if (schema.type === "object") return "{}";
  if (schema.type === "array") return "[]";
  return schema.type === "string" ? '""' : String(schema.minimum);
}

function valueProposals(schema: SchemaNode): readonly Proposal[] {
  if (schema.type === "string" && schema.enum !== undefined) {
    const { enumDescriptions, markdownEnumDescriptions } = schema;
    return schema.enum.map((name, index) => {
      const detail = enumDescriptions?.[index] ?? "";
      const more = markdownEnumDescriptions?.[index] ?? "";
      return { ...value(name, detail), documentation: more === detail ? "" : more };
    });
  }
  const texts = (schema.examples ?? []).filter((example) => typeof example === "string");
  return texts.map((text) => value(text, schema.description ?? ""));
}

function value(name: string, detail: string): Proposal {
  return { label: name, kind: "value", detail, documentation: "", text: JSON.stringify(name) };
}

const PIN_KEYS: ReadonlySet<string> = new Set([
  "ps2/clock",
  "ps2/data",
  "serial/tx",
  "serial/rts",
  "serial/dtr",
]);

function isPinPath(path: readonly (string | number)[]): boolean {
  return path[0] === "wires" && PIN_KEYS.has(path.slice(1).join("/"));
}

/** Pins of the chip that the same file names. */
function pinProposals(text: string, vocabulary: Vocabulary): readonly Proposal[] {
  const chip = /"chip"\s*:\s*"([^"\n]*)"/.exec(text)?.[1];
  const pins = chip === undefined ? [] : (chipNamed(chip, vocabulary)?.pins ?? []);
  return pins.map((pin) => ({
    ...value(pin.name, pin.title),
    kind: "pin",
    documentation: pin.documentation,
  }));
}
