import { propertySchema, type SchemaDocument, type SchemaNode } from "../../notes/settings/schema-node.ts";
import { block, escaped, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";

const example = {
  board: { chip: "atmega328p", clock: "16MHz" },
  sources: ["*.ino", "src/**/*.c"],
  defines: { BAUD: "1200" },
  includePaths: ["lib"],
  wires: {
    ps2: { clock: "2", data: "3", pullups: "internal" },
    serial: { uart: 0, rts: "4", report: "two-button", shifter: "inverting", baud: 1200, line: "7N1" },
  },
  rules: { "ps2/wait-forever": "warning" },
  simulate: { strokes: ["circle", "click"], mice: ["plain", "wheel"], pcs: ["rts-toggle"] },
};

export function edgewiseJson(schema: SchemaDocument): ReferencePage {
  const title = "edgewise.json";
  return {
    name: "edgewise-json.md",
    title,
    about: "the settings of a project: which files, which chip, which pins, which rules, which runs",
    pictures: [],
    text: page([
      `# ${title}`,
      `${escaped(schema.description ?? "")} It lies in the project's root folder. Comments and trailing commas may stand in it.`,
      block("json", JSON.stringify(example, undefined, 2)),
      table(["key", "holds", "what it is"], rowsOf("", schema)),
      "The names below `rules` are the ids of [the rules](../rules/README.md); each is `error`, `warning`, `info` or `off`.",
    ]),
  };
}

/** A row for each property, those of objects below theirs. */
function rowsOf(path: string, node: SchemaNode): readonly (readonly string[])[] {
  if (node.type !== "object") return [];
  return Object.keys(node.properties ?? {}).flatMap((name) => {
    const below = propertySchema(node, name);
    if (below === undefined) return [];
    const here = path === "" ? name : `${path}.${name}`;
    const deeper = here === "rules" ? [] : rowsOf(here, below);
    return [[`\`${here}\``, kindOf(below), escaped(below.description ?? "")], ...deeper];
  });
}

function kindOf(node: SchemaNode): string {
  switch (node.type) {
    case "object":
      return node.additionalProperties === false ? "object" : "object: names to values";
    case "array":
      return `list of ${node.items.type === "object" ? "objects" : `${node.items.type}s`}`;
    case "integer":
      return `${node.minimum} to ${node.maximum}`;
    case "string":
      return choicesOf(node.enum) ?? "text";
  }
}

/** Names, where they are few enough to be read. */
function choicesOf(names: readonly string[] | undefined): string | undefined {
  if (names === undefined || names.length > 12) return undefined;
  return names.map((name) => `\`${name}\``).join(", ");
}
