import { type Directive, directiveNamed, keysOf, type NamedValue } from "../grammar/directives.ts";
import { VALUE_SHAPES } from "../grammar/value-kinds.ts";
import { BUTTONS } from "../note.ts";
import type { Term, Vocabulary } from "../vocabulary.ts";
import type { SchemaArray, SchemaDocument, SchemaNode, SchemaObject, SchemaString } from "./schema-node.ts";

/**
 * The schema of edgewise.json: published with the package, contributed to editors, and what the file is checked
 * by. Boards and wires come from the table of directives, so notes and settings take the same keys and values.
 * `ownStrokes` are the names of the file's own movements; undefined where there is no file yet, so that any name may be one.
 */
export function settingsSchema(vocabulary: Vocabulary, ownStrokes?: readonly string[]): SchemaDocument {
  return {
    $schema: "http://json-schema.org/draft-07/schema#",
    title: "edgewise.json",
    description:
      "What a firmware project's sources do not say by themselves. Wire notes in the sources win over it.",
    type: "object",
    additionalProperties: false,
    properties: {
      $schema: { type: "string", description: "Where the schema of this file is, for editors." },
      board: boardSchema(vocabulary),
      sources: strings(
        "The files to read, as globs relative to this folder (`*`, `**`, `?`). Without it: every source file.",
        ["*.ino", "src/**/*.c"],
      ),
      defines: DEFINES,
      includePaths: strings("Folders to look for headers in, relative to this folder.", ["lib"]),
      wires: {
        type: "object",
        description: "Where the mouse and the PC are connected.",
        additionalProperties: false,
        properties: {
          ps2: keysSchema("ps2", vocabulary),
          serial: { ...keysSchema("serial", vocabulary), not: { required: ["uart", "tx"] } },
        },
      },
      rules: rulesSchema(vocabulary),
      simulate: simulateSchema(vocabulary, ownStrokes),
    },
  };
}

const DEFINES: SchemaObject = {
  type: "object",
  description: "Macros as the build defines them: name to replacement text.",
  examples: [{ F_CPU: "16000000UL" }],
  propertyNames: {
    pattern: "^[A-Za-z_][A-Za-z0-9_]*$",
    patternErrorMessage: 'expected the name of a macro without parameters, such as "F_CPU"',
  },
  additionalProperties: {
    type: "string",
    description: "Replacement text; empty for a macro that is only defined.",
  },
};

/** How far and how long one step of a movement may go; more is a slip of the pen. */
const COUNTS = { minimum: -100_000, maximum: 100_000 };
const LONGEST_MS = 600_000;

const OWN_STROKES: SchemaObject = {
  type: "object",
  description: "Sample movements of this project: name to steps, done one after the other.",
  examples: [
    {
      "to-the-quay": [
        { right: 120, down: 40, ms: 300 },
        { press: ["left"], ms: 80 },
      ],
    },
  ],
  propertyNames: {
    pattern: "^[a-z0-9]+(-[a-z0-9]+)*$",
    patternErrorMessage: 'expected a name of small letters, digits and hyphens, such as "zigzag"',
  },
  additionalProperties: {
    type: "array",
    description: "Steps of the movement.",
    items: {
      type: "object",
      description: "Buttons change at once, then the mouse moves evenly. What is not said stays as it is.",
      additionalProperties: false,
      properties: {
        ms: {
          type: "integer",
          description: "How many milliseconds the step takes; without it the mouse moves at once.",
          minimum: 0,
          maximum: LONGEST_MS,
        },
        right: { type: "integer", description: "Counts to the right; negative is left.", ...COUNTS },
        down: {
          type: "integer",
          description: "Counts downwards on the screen; negative is up.",
          ...COUNTS,
        },
        wheel: { type: "integer", description: "Steps of the wheel towards the user.", ...COUNTS },
        press: buttons("Buttons that go down as the step begins."),
        release: buttons("Buttons that are let go as the step begins."),
      },
    },
  },
};

function buttons(description: string): SchemaArray {
  return { type: "array", description, items: { type: "string", enum: BUTTONS } };
}

function simulateSchema(vocabulary: Vocabulary, ownStrokes: readonly string[] | undefined): SchemaObject {
  return {
    type: "object",
    description: "What a matrix of simulations is made of.",
    additionalProperties: false,
    properties: {
      strokes: {
        type: "array",
        description: "Names of the sample movements; without it a few that tell most, and the project's own.",
        items: strokeSchema(vocabulary, ownStrokes),
      },
      mice: {
        type: "array",
        description: "Names of the virtual mice; without it all of them.",
        items: termsSchema("A virtual mouse.", vocabulary.mice),
      },
      pcs: {
        type: "array",
        description: "Names of the virtual PCs; without it all of them.",
        items: termsSchema("A virtual PC.", vocabulary.pcs),
      },
      ownStrokes: OWN_STROKES,
    },
  };
}

/** A stroke of the bench or one of the file's own, which hides the bench's of its name. */
function strokeSchema({ strokes }: Vocabulary, own: readonly string[] | undefined): SchemaString {
  const description = "A sample movement.";
  if (own === undefined) {
    const { pattern } = OWN_STROKES.propertyNames ?? {};
    return {
      type: "string",
      description,
      anyOf: [termsSchema(description, strokes), { type: "string", ...(pattern && { pattern }) }],
    };
  }
  const ownTerms = own.map((name): Term => ({ name, title: "a movement of this file", documentation: "" }));
  return termsSchema(description, [...ownTerms, ...strokes.filter(({ name }) => !own.includes(name))]);
}

function strings(description: string, example: readonly string[]): SchemaArray {
  const items: SchemaString = {
    type: "string",
    pattern: "\\S",
    patternErrorMessage: "expected text that is not empty",
  };
  return { type: "array", description, items, examples: [example] };
}

function boardSchema(vocabulary: Vocabulary): SchemaObject {
  const directive = directiveNamed("board");
  const chip = directive?.parts.flatMap((part) => (part.kind === "value" ? [part] : [])) ?? [];
  return objectOf(directive, [...chip, ...(directive === undefined ? [] : keysOf(directive))], vocabulary);
}

function keysSchema(name: string, vocabulary: Vocabulary): SchemaObject {
  const directive = directiveNamed(name);
  return objectOf(directive, directive === undefined ? [] : keysOf(directive), vocabulary);
}

function objectOf(
  directive: Directive | undefined,
  values: readonly NamedValue[],
  vocabulary: Vocabulary,
): SchemaObject {
  const properties = Object.fromEntries(values.map((named) => [named.name, valueSchema(named, vocabulary)]));
  return {
    type: "object",
    description: directive?.documentation ?? "",
    additionalProperties: false,
    properties,
  };
}

/** The schema of one value, from its row in the table of directives. */
function valueSchema(named: NamedValue, vocabulary: Vocabulary): SchemaNode {
  const { value, documentation: description } = named;
  const shape = VALUE_SHAPES[value.kind];
  switch (value.kind) {
    case "chip":
      return chipSchema(description, vocabulary);
    case "layout": {
      const layouts = vocabulary.layouts.filter(
        (each) => value.side === "either" || each.side === value.side,
      );
      return termsSchema(description, layouts);
    }
    case "choice":
      return {
        type: "string",
        description,
        enum: value.choices.map((choice) => choice.name),
        enumDescriptions: value.choices.map((choice) => choice.documentation),
      };
    case "uart":
      return { type: "integer", description, minimum: 0, maximum: 9 };
    case "baud":
      return { type: "integer", description, minimum: 1, maximum: 9_999_999 };
    default:
      return {
        type: "string",
        description,
        pattern: shape.pattern,
        patternErrorMessage: `expected ${shape.what}, such as "${shape.example}"`,
        examples: [shape.example],
      };
  }
}

/** Both ways of writing a chip: as the model calls it and as it is printed. */
function chipSchema(description: string, vocabulary: Vocabulary): SchemaString {
  const printed = vocabulary.chips.filter((chip) => chip.printedName !== chip.name);
  return {
    type: "string",
    description,
    enum: [...vocabulary.chips.map((chip) => chip.name), ...printed.map((chip) => chip.printedName)],
    enumDescriptions: [...vocabulary.chips, ...printed].map((chip) => chip.title),
  };
}

function termsSchema(description: string, terms: readonly Term[]): SchemaString {
  return {
    type: "string",
    description,
    enum: terms.map((term) => term.name),
    enumDescriptions: terms.map((term) => term.title),
    markdownEnumDescriptions: terms.map(({ title, documentation }) =>
      documentation === "" ? title : `${title}\n\n${documentation}`,
    ),
  };
}

/** Levels of a rule and what they do. */
const LEVELS: Readonly<Record<"error" | "warning" | "info" | "off", string>> = {
  error: "Fails the check.",
  warning: "Fails the check where warnings do.",
  info: "Advice; never fails the check.",
  off: "Not reported.",
};

function rulesSchema(vocabulary: Vocabulary): SchemaObject {
  const rule = (term: Term): SchemaString => ({
    type: "string",
    description: term.title,
    enum: Object.keys(LEVELS),
    enumDescriptions: Object.values(LEVELS),
  });
  return {
    type: "object",
    description: "Levels of single rules.",
    additionalProperties: false,
    properties: Object.fromEntries(vocabulary.rules.map((term) => [term.name, rule(term)])),
  };
}
