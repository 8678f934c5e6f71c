import { describe, expect, it } from "vitest";
import { DIRECTIVES, keysOf } from "../../../../src-core/notes/grammar/directives.ts";
import { settingsSchema } from "../../../../src-core/notes/settings/schema.ts";
import {
  propertySchema,
  type SchemaNode,
  type SchemaString,
} from "../../../../src-core/notes/settings/schema-node.ts";
import { SMALL_VOCABULARY } from "../small-vocabulary.ts";

const schema = settingsSchema(SMALL_VOCABULARY);

function at(...path: readonly string[]): SchemaNode | undefined {
  let node: SchemaNode | undefined = schema;
  for (const name of path) node = node?.type === "object" ? propertySchema(node, name) : undefined;
  return node;
}

describe("the schema of edgewise.json", () => {
  it("is plain JSON", () => {
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it("uses words of JSON Schema draft-07 (IETF draft-handrews-json-schema-validation-01) and three of editors", () => {
    const words = new Set([
      ...["$schema", "title", "description", "examples", "type", "properties", "additionalProperties"],
      ...["propertyNames", "not", "required", "items", "enum", "pattern", "minimum", "maximum"],
      ...["anyOf", "enumDescriptions", "markdownEnumDescriptions", "patternErrorMessage"],
    ]);
    const unknown: string[] = [];
    const look = (node: unknown, isNames: boolean): void => {
      if (typeof node !== "object" || node === null || Array.isArray(node)) return;
      for (const [key, value] of Object.entries(node)) {
        if (!isNames && !words.has(key)) unknown.push(key);
        if (key !== "examples") look(value, !isNames && key === "properties");
      }
    };
    look(schema, false);
    expect(unknown).toEqual([]);
  });

  it("has the keys that the annotation schema gives", () => {
    const keys = (node: SchemaNode | undefined) =>
      node?.type === "object" ? Object.keys(node.properties ?? {}) : [];
    expect(keys(schema)).toEqual([
      "$schema",
      "board",
      "sources",
      "defines",
      "includePaths",
      "wires",
      "rules",
      "simulate",
    ]);
    expect(keys(at("board"))).toEqual(["chip", "clock"]);
    expect(keys(at("wires", "ps2"))).toEqual(["clock", "data", "pullups"]);
    expect(keys(at("wires", "serial"))).toEqual([
      "uart",
      "tx",
      "rts",
      "dtr",
      "report",
      "shifter",
      "baud",
      "line",
      "scale",
    ]);
    expect(keys(at("simulate"))).toEqual(["strokes", "mice", "pcs", "ownStrokes"]);
  });

  it("lists the names of the vocabulary", () => {
    expect(at("board", "chip")).toMatchObject({
      enum: ["atmega328p", "atmega2560", "attiny85", "ATmega328P", "ATmega2560", "ATtiny85"],
    });
    expect(at("wires", "serial", "report")).toMatchObject({ enum: ["two-button", "wheel"] });
    expect(at("rules", "ps2/wait-forever")).toMatchObject({ enum: ["error", "warning", "info", "off"] });
    expect(at("rules", "ps2/wait-forver")).toBeUndefined();
  });

  it("lists what a simulation may be made of, and leaves room for a file's own strokes", () => {
    const items = (name: string) => {
      const list = at("simulate", name);
      return list?.type === "array" ? list.items : undefined;
    };
    expect(items("mice")).toMatchObject({ enum: ["plain", "wheel"] });
    expect(items("pcs")).toMatchObject({ enum: ["rts-toggle", "hurried"] });
    const { anyOf: [named, own] = [] } = items("strokes") as SchemaString;
    expect(named).toMatchObject({ enum: ["circle", "nudge"] });
    expect("to-the-quay").toMatch(new RegExp(own?.pattern ?? ""));
    expect("To the quay").not.toMatch(new RegExp(own?.pattern ?? ""));
  });

  it("describes every key of the notes in the notes' own words", () => {
    for (const directive of DIRECTIVES) {
      if (directive.name !== "ps2" && directive.name !== "serial") continue;
      for (const key of keysOf(directive)) {
        expect(at("wires", directive.name, key.name)?.description).toBe(key.documentation);
      }
    }
  });

  it("has patterns that are regular expressions, and examples that fit them", () => {
    const look = (node: SchemaNode | undefined): void => {
      if (node?.type === "object") for (const inner of Object.values(node.properties ?? {})) look(inner);
      if (node?.type !== "string" || node.pattern === undefined) return;
      for (const example of node.examples ?? []) expect(String(example)).toMatch(new RegExp(node.pattern));
    };
    look(schema);
  });
});
