import type { ValueKind } from "./value-kinds.ts";

/**
 * The directives of wire notes, as data. Parser, validation, completion, hovers, the schema of edgewise.json and
 * the documentation all read this table.
 */

export type DirectiveName = "board" | "ps2" | "serial" | "means" | "encodes" | "decodes" | "try" | "allow";

/** A `key=value` that a directive takes. */
export interface NamedValue {
  readonly name: string;
  readonly value: ValueKind;
  readonly documentation: string;
}

/** One step of a directive, in the order in which they are written. */
export type Part =
  | ({ readonly kind: "value"; readonly optional: boolean } & NamedValue)
  /** A fixed word: `from`, `into`, `because`. */
  | { readonly kind: "word"; readonly word: string; readonly documentation: string }
  /** `key=value` in any order, each at most once. */
  | { readonly kind: "keys"; readonly keys: readonly NamedValue[] }
  /** `field=operand` for fields of the layout named before, each at most once, at least one. */
  | { readonly kind: "fields"; readonly documentation: string };

/** What a note of this directive has to stand before. */
export type BelongsTo = "project" | "constant" | "function" | "code";

export interface Directive {
  readonly name: DirectiveName;
  readonly belongsTo: BelongsTo;
  readonly parts: readonly Part[];
  readonly title: string;
  readonly documentation: string;
  readonly example: string;
}

const PIN: ValueKind = { kind: "pin" };

const BOARD: Directive = {
  name: "board",
  belongsTo: "project",
  title: "the chip and its clock",
  documentation:
    "The chip that runs this firmware and its clock. Registers, pins, divisors and integer sizes follow from the chip.",
  example: "@wire board atmega328p clock=16MHz",
  parts: [
    {
      kind: "value",
      optional: true,
      name: "chip",
      value: { kind: "chip" },
      documentation: "The chip, by its part number.",
    },
    {
      kind: "keys",
      keys: [
        {
          name: "clock",
          value: { kind: "clock" },
          documentation: "CPU clock with its unit. May be left out where `F_CPU` is defined.",
        },
      ],
    },
  ],
};

const PS2: Directive = {
  name: "ps2",
  belongsTo: "project",
  title: "the pins of the PS/2 port",
  documentation: "Where clock and data of the PS/2 mouse are connected.",
  example: "@wire ps2 clock=2 data=3 pullups=internal",
  parts: [
    {
      kind: "keys",
      keys: [
        {
          name: "clock",
          value: PIN,
          documentation: "Pin of the PS/2 clock: board number (`2`, `A3`) or port bit (`PD2`).",
        },
        {
          name: "data",
          value: PIN,
          documentation: "Pin of the PS/2 data line: board number (`2`, `A3`) or port bit (`PD2`).",
        },
        {
          name: "pullups",
          documentation: "What pulls clock and data up while nobody drives them.",
          value: {
            kind: "choice",
            choices: [
              { name: "internal", documentation: "The chip's own pull-ups, switched on by the firmware." },
              { name: "external", documentation: "Resistors on the board." },
            ],
          },
        },
      ],
    },
  ],
};

const SERIAL: Directive = {
  name: "serial",
  belongsTo: "project",
  title: "the serial side: UART or pin, control lines, report layout",
  documentation:
    "How the adapter talks to the PC: a UART or a bit-banged pin, the control lines, the report layout.",
  example: "@wire serial uart=0 rts=4 report=two-button shifter=inverting",
  parts: [
    {
      kind: "keys",
      keys: [
        {
          name: "uart",
          value: { kind: "uart" },
          documentation: "Number of the UART that sends the reports. Not together with `tx`.",
        },
        {
          name: "tx",
          value: PIN,
          documentation: "Pin on which the firmware sends bit by bit. Not together with `uart`.",
        },
        { name: "rts", value: PIN, documentation: "Pin that reads the PC's RTS line." },
        { name: "dtr", value: PIN, documentation: "Pin that reads the PC's DTR line." },
        {
          name: "report",
          value: { kind: "layout", side: "serial" },
          documentation: "Layout of the reports the PC gets.",
        },
        {
          name: "shifter",
          documentation: "Whether a level shifter turns every line of the serial side over.",
          value: {
            kind: "choice",
            choices: [
              {
                name: "inverting",
                documentation: "Every line is turned over: RTS ON reads low at the pin, idle TX is high.",
              },
              { name: "none", documentation: "Nothing turns the lines over." },
            ],
          },
        },
        { name: "baud", value: { kind: "baud" }, documentation: "Speed that the PC expects, in baud." },
        {
          name: "line",
          value: { kind: "line" },
          documentation:
            "Line format that the PC expects: data bits, parity (`N` none, `E` even, `O` odd, `M` mark, `S` space), stop bits.",
        },
        {
          name: "scale",
          value: { kind: "scale" },
          documentation:
            "Counts of x and y that the PC gets for each count of the mouse, where the firmware means to change them: `1/2` halves every movement.",
        },
      ],
    },
  ],
};

const MEANS: Directive = {
  name: "means",
  belongsTo: "constant",
  title: "the constant below stands for this quantity",
  documentation:
    "Ties the constant below to a quantity of the model, whose limits it is then checked against.",
  example: "@wire means ps2.request-hold",
  parts: [
    {
      kind: "value",
      optional: false,
      name: "quantity",
      value: { kind: "quantity" },
      documentation: "What the constant below stands for.",
    },
  ],
};

const LAYOUT: Part = {
  kind: "value",
  optional: false,
  name: "layout",
  value: { kind: "layout", side: "either" },
  documentation: "The layout of the report that the function below works on.",
};

const ENCODES: Directive = {
  name: "encodes",
  belongsTo: "function",
  title: "the function below builds a report",
  documentation:
    "Says which parameter of the function below becomes which field of the report. A field counts in the layout's own " +
    "sense; `y=-dy` says that `dy` grows the other way, `left=b.0` that the button is bit 0 of `b`.",
  example: "@wire encodes two-button from x=dx y=-dy left=lb right=rb into out",
  parts: [
    LAYOUT,
    { kind: "word", word: "from", documentation: "The fields and their parameters follow." },
    { kind: "fields", documentation: "Layout field = parameter, with `-` where it grows the other way." },
    { kind: "word", word: "into", documentation: "Where the report goes follows." },
    {
      kind: "value",
      optional: false,
      name: "into",
      value: { kind: "path" },
      documentation:
        "The array that gets the bytes, or what is called with each byte: a function, or a pointer to one that the function is " +
        "handed or finds in an object.",
    },
  ],
};

const DECODES: Directive = {
  name: "decodes",
  belongsTo: "function",
  title: "the function below takes a report apart",
  documentation:
    "Says which bytes the function below reads and where each field of the report ends up: parameters (through pointers " +
    "or references), members or globals.",
  example: "@wire decodes ps2-standard from buf into x=dx y=dy left=b.0 right=b.1",
  parts: [
    LAYOUT,
    { kind: "word", word: "from", documentation: "Where the bytes are follows." },
    {
      kind: "value",
      optional: false,
      name: "from",
      value: { kind: "path" },
      documentation: "The parameter or global that holds the bytes.",
    },
    { kind: "word", word: "into", documentation: "The fields and their targets follow." },
    { kind: "fields", documentation: "Layout field = target; `b.0` is bit 0 of `b`." },
  ],
};

function counts(name: string, documentation: string): NamedValue {
  return { name, value: { kind: "counts" }, documentation };
}

const TRY: Directive = {
  name: "try",
  belongsTo: "function",
  title: "the movement to try the function below with",
  documentation: "A sample movement for the function below, in counts of the mouse.",
  example: "@wire try right=12 down=5 press=left",
  parts: [
    {
      kind: "keys",
      keys: [
        counts("right", "Counts to the right. Not together with `left`."),
        counts("left", "Counts to the left. Not together with `right`."),
        counts("down", "Counts downwards on the screen, towards the user. Not together with `up`."),
        counts("up", "Counts upwards on the screen, away from the user. Not together with `down`."),
        counts("wheel", "Steps of the wheel; positive turns towards the user."),
        { name: "press", value: { kind: "buttons" }, documentation: "Buttons held down, joined by commas." },
      ],
    },
  ],
};

const ALLOW: Directive = {
  name: "allow",
  belongsTo: "code",
  title: "accept a finding here, with a reason",
  documentation:
    "Accepts the findings of one rule in the declaration or statement below, or on this line. The reason is required.",
  example: '@wire allow ps2/wait-forever because "the mouse is soldered on"',
  parts: [
    {
      kind: "value",
      optional: false,
      name: "rule",
      value: { kind: "rule" },
      documentation: "The rule's id.",
    },
    { kind: "word", word: "because", documentation: "The reason follows, in quotes." },
    {
      kind: "value",
      optional: false,
      name: "reason",
      value: { kind: "reason" },
      documentation: "Why the finding is accepted here, in quotes.",
    },
  ],
};

export const DIRECTIVES: readonly Directive[] = [BOARD, PS2, SERIAL, MEANS, ENCODES, DECODES, TRY, ALLOW];

export const DIRECTIVE_NAMES: readonly string[] = DIRECTIVES.map((directive) => directive.name);

export function directiveNamed(name: string): Directive | undefined {
  return DIRECTIVES.find((directive) => directive.name === name);
}

/** The keys a directive takes, for edgewise.json, which says the same. */
export function keysOf(directive: Directive): readonly NamedValue[] {
  return directive.parts.flatMap((part) => (part.kind === "keys" ? part.keys : []));
}
