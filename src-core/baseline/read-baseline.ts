import { findNodeAtLocation, type Node } from "jsonc-parser";
import type { Span } from "../finding.ts";
import { readJson } from "../notes/settings/json-tree.ts";
import type { SchemaObject } from "../notes/settings/schema-node.ts";
import { type Faults, validate } from "../notes/settings/validate.ts";
import { ruleIds } from "../rule-ids.ts";
import type { Baseline, BaselineEntry, Rename } from "./baseline.ts";

/** Version of the form; a file of another one is refused. */
export const baselineVersion = 1;

const mostTimes = 1_000_000;

const entrySchema: SchemaObject = {
  type: "object",
  additionalProperties: false,
  properties: {
    rule: { type: "string", enum: ruleIds },
    file: { type: "string", pattern: "\\S", patternErrorMessage: "expected the path of a file" },
    text: { type: "string" },
    times: { type: "integer", minimum: 1, maximum: mostTimes },
  },
};

const schema: SchemaObject = {
  type: "object",
  additionalProperties: false,
  properties: {
    version: { type: "integer", minimum: baselineVersion, maximum: baselineVersion },
    accepted: { type: "array", items: entrySchema },
  },
};

export interface BaselineFault {
  readonly span: Span;
  readonly message: string;
}

/** Reads the text of a baseline; its first fault where there is one. `rename` makes the names that findings use. Never throws. */
export function readBaseline(file: string, text: string, rename: Rename): Baseline | BaselineFault {
  const { root, problems } = readJson(file, text);
  if (root === undefined || problems.length > 0) {
    return problems[0] ?? { span: { file, start: 0, end: 0 }, message: "there is no value" };
  }
  const faults: Faults = { file, problems: [], nodes: new Set() };
  validate(root, schema, "", faults);
  const [fault] = faults.problems;
  if (fault !== undefined) return fault;
  const missing = missingIn(root, ["version", "accepted"], file);
  if (missing !== undefined) return missing;
  const entries: BaselineEntry[] = [];
  for (const node of findNodeAtLocation(root, ["accepted"])?.children ?? []) {
    const gap = missingIn(node, ["rule", "file", "text"], file);
    if (gap !== undefined) return gap;
    entries.push({
      rule: textAt(node, "rule"),
      file: rename(textAt(node, "file")),
      text: textAt(node, "text"),
      times: timesAt(node),
      span: spanOf(node, file),
    });
  }
  return { file, text, entries };
}

function missingIn(node: Node, names: readonly string[], file: string): BaselineFault | undefined {
  const missing = names.find((name) => findNodeAtLocation(node, [name]) === undefined);
  return missing === undefined
    ? undefined
    : { span: spanOf(node, file), message: `there is no \`${missing}\` in it` };
}

function textAt(node: Node, name: string): string {
  const value: unknown = findNodeAtLocation(node, [name])?.value;
  return typeof value === "string" ? value : "";
}

/** Once, where it is not said. */
function timesAt(node: Node): number {
  const value: unknown = findNodeAtLocation(node, ["times"])?.value;
  return typeof value === "number" ? value : 1;
}

function spanOf({ offset, length }: Node, file: string): Span {
  return { file, start: offset, end: offset + length };
}
