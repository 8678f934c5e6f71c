import { describe, expect, it } from "vitest";
import type { Span } from "../../../src-core/finding.ts";
import type { Note } from "../../../src-core/notes/note.ts";
import { readNotes } from "../../../src-core/notes/read-notes.ts";
import { lexFile } from "../../../src-core/reader/lexer/lex-file.ts";
import { SMALL_VOCABULARY } from "./small-vocabulary.ts";

function read(text: string): readonly Note[] {
  const result = readNotes(lexFile("ferry.c", text, "c++").comments, SMALL_VOCABULARY);
  expect(result.problems).toEqual([]);
  return result.notes;
}

function only(text: string): Note {
  const [note, ...more] = read(text);
  expect(more).toEqual([]);
  if (note === undefined) throw new Error(`no note in ${text}`);
  return note;
}

/** The text that a span covers. */
function under(text: string, span: Span | undefined): string | undefined {
  return span && text.slice(span.start, span.end);
}

describe("the directives of the annotation schema", () => {
  it("board: chip and clock, each word with its place", () => {
    const text = "int a;\n// @wire board atmega328p clock=16MHz\n";
    const note = only(text);
    expect(note).toMatchObject({
      kind: "board",
      board: { chip: { value: "atmega328p" }, clockHz: { value: 16_000_000 } },
    });
    if (note.kind !== "board") return;
    expect(under(text, note.span)).toBe("@wire board atmega328p clock=16MHz");
    expect(under(text, note.directive)).toBe("board");
    expect(under(text, note.board.chip?.span)).toBe("atmega328p");
    expect(under(text, note.board.clockHz?.span)).toBe("16MHz");
  });

  it.each([
    ["16MHz", 16_000_000],
    ["7.3728MHz", 7_372_800],
    ["14.7456MHz", 14_745_600],
    ["32768Hz", 32_768],
    ["32.768kHz", 32_768],
    ["128kHz", 128_000],
  ])("a clock of %s is %d Hz", (clock, hertz) => {
    expect(only(`// @wire board attiny85 clock=${clock}`)).toMatchObject({
      board: { clockHz: { value: hertz } },
    });
  });

  it("board: chip or clock may be left out, and chips may be written as printed", () => {
    expect(only("// @wire board ATmega328P")).toMatchObject({
      board: { chip: { value: "atmega328p" }, clockHz: undefined },
    });
    expect(only("// @wire board clock=8MHz")).toMatchObject({
      board: { chip: undefined, clockHz: { value: 8_000_000 } },
    });
  });

  it("ps2: board numbers or port bits", () => {
    expect(only("// @wire ps2 clock=2 data=A3 pullups=internal")).toMatchObject({
      kind: "ps2",
      ps2: { clock: { value: "2" }, data: { value: "A3" }, pullups: { value: "internal" } },
    });
    expect(only("// @wire ps2 data=PD3")).toMatchObject({
      ps2: { clock: undefined, data: { value: "PD3" }, pullups: undefined },
    });
  });

  it("serial: a UART or a pin, control lines, layout, shifter, speed, format and scale", () => {
    const text =
      "// @wire serial uart=0 rts=4 dtr=PD3 report=two-button shifter=inverting baud=1200 line=7N1 scale=1/2";
    const note = only(text);
    expect(note).toMatchObject({
      kind: "serial",
      serial: {
        uart: { value: 0 },
        tx: undefined,
        rts: { value: "4" },
        dtr: { value: "PD3" },
        report: { value: "two-button" },
        shifter: { value: "inverting" },
        baud: { value: 1200 },
        line: { value: "7N1" },
        scale: { value: 0.5 },
      },
    });
    if (note.kind !== "serial") return;
    expect(under(text, note.serial.line?.span)).toBe("7N1");
    expect(only("// @wire serial tx=1 shifter=none")).toMatchObject({
      serial: { uart: undefined, tx: { value: "1" }, shifter: { value: "none" } },
    });
  });

  it.each([
    ["2", 2],
    ["1/2", 0.5],
    ["3/4", 0.75],
    ["999/1", 999],
  ])("serial: a scale of %s", (written, value) => {
    expect(only(`// @wire serial scale=${written}`)).toMatchObject({ serial: { scale: { value } } });
  });

  it("means: a quantity", () => {
    expect(only("// @wire means ps2.request-hold")).toMatchObject({
      kind: "means",
      quantity: { value: "ps2.request-hold" },
    });
  });

  it("encodes: fields from parameters with their sign, into an array or function", () => {
    const text = "// @wire encodes two-button from x=dx y=-dy left=lb right=b.1 into out";
    const note = only(text);
    expect(note).toMatchObject({
      kind: "encodes",
      layout: { value: "two-button" },
      fields: [
        { field: { value: "x" }, operand: { value: { negated: false, path: ["dx"], bit: undefined } } },
        { field: { value: "y" }, operand: { value: { negated: true, path: ["dy"], bit: undefined } } },
        { field: { value: "left" }, operand: { value: { negated: false, path: ["lb"], bit: undefined } } },
        { field: { value: "right" }, operand: { value: { negated: false, path: ["b"], bit: 1 } } },
      ],
      into: { value: "out" },
    });
    if (note.kind !== "encodes") return;
    expect(
      note.fields.map(({ field, operand }) => [under(text, field.span), under(text, operand.span)]),
    ).toEqual([
      ["x", "dx"],
      ["y", "-dy"],
      ["left", "lb"],
      ["right", "b.1"],
    ]);
    expect(under(text, note.into.span)).toBe("out");
  });

  it("decodes: bytes from a name, fields into targets, members and bits", () => {
    expect(
      only("// @wire decodes ps2-standard from buf into x=out.dx y=m->dy left=b.0 right=b.31"),
    ).toMatchObject({
      kind: "decodes",
      layout: { value: "ps2-standard" },
      from: { value: "buf" },
      fields: [
        { operand: { value: { path: ["out", "dx"], bit: undefined } } },
        { operand: { value: { path: ["m", "dy"], bit: undefined } } },
        { operand: { value: { path: ["b"], bit: 0 } } },
        { operand: { value: { path: ["b"], bit: 31 } } },
      ],
    });
  });

  it("try: right and down positive, left and up negative, buttons", () => {
    expect(only("// @wire try right=12 down=5 press=left")).toMatchObject({
      kind: "try",
      right: 12,
      down: 5,
      wheel: 0,
      press: ["left"],
    });
    expect(only("// @wire try left=3 up=4 wheel=-1 press=left,button4")).toMatchObject({
      right: -3,
      down: -4,
      wheel: -1,
      press: ["left", "button4"],
    });
  });

  it("allow: a rule and a reason in quotes", () => {
    const text = '// @wire allow ps2/wait-forever because "the \\"mouse\\" is soldered on"';
    const note = only(text);
    expect(note).toMatchObject({
      kind: "allow",
      rule: { value: "ps2/wait-forever" },
      reason: { value: 'the "mouse" is soldered on' },
    });
    if (note.kind !== "allow") return;
    expect(under(text, note.reason.span)).toBe('"the \\"mouse\\" is soldered on"');
  });
});

describe("where notes stand", () => {
  const kinds = (text: string) => read(text).map((note) => note.kind);

  it.each([
    ["a line comment", "// @wire means ps2.request-hold"],
    ["a comment without a space", "//@wire means ps2.request-hold"],
    ["a block comment", "/* @wire means ps2.request-hold */"],
    ["a block comment that hugs the note", "/*@wire means ps2.request-hold*/"],
    ["a doc comment", "/** @wire means ps2.request-hold */"],
    ["a line of a doc comment", "/**\n * How long clock is held.\n * @wire means ps2.request-hold\n */"],
    ["a boxed comment", "/*****\n * @wire means ps2.request-hold *\n *****/"],
    ["doc line comments", "/// @wire means ps2.request-hold\n//! as measured"],
    ["behind other text", "// How long clock is held. @wire means ps2.request-hold"],
    ["behind code", "#define HOLD 100 // @wire means ps2.request-hold"],
    ["lines ended by CR LF", "// @wire means ps2.request-hold\r\nint a;\r\n"],
    ["a comment that the file's end cuts off", "/* @wire means ps2.request-hold"],
  ])("%s", (_, text) => {
    expect(only(text)).toMatchObject({ kind: "means", quantity: { value: "ps2.request-hold" } });
  });

  it("takes several notes of one comment, one per line", () => {
    const text =
      "/* @wire encodes wheel from x=dx into out\n * @wire try right=12\n * then\n * @wire try up=1 */";
    expect(kinds(text)).toEqual(["encodes", "try", "try"]);
  });

  it("leaves text alone that only speaks of notes", () => {
    const text =
      '// Write `@wire board` or "@wire means" where needed; the @wire notes come first.\n' +
      "// mail me@wire.example, @wired, @@wire\n" +
      'const char *s = "// @wire means x";\n';
    expect(kinds(text)).toEqual([]);
  });
});
