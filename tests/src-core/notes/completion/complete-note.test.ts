import { describe, expect, it } from "vitest";
import { completeNote } from "../../../../src-core/notes/completion/complete-note.ts";
import type { Completion } from "../../../../src-core/notes/completion/completion.ts";
import { hoverNote } from "../../../../src-core/notes/completion/hover-note.ts";
import { lexFile } from "../../../../src-core/reader/lexer/lex-file.ts";
import { SMALL_VOCABULARY } from "../small-vocabulary.ts";

const KNOWLEDGE = { vocabulary: SMALL_VOCABULARY, chip: "atmega328p" };

/** `|` marks the cursor. */
function complete(marked: string, chip: string | undefined = "atmega328p"): readonly Completion[] {
  const offset = marked.indexOf("|");
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  return completeNote(lexFile("a.c", text, "c"), offset, { vocabulary: SMALL_VOCABULARY, chip });
}

function labels(marked: string, chip?: string): readonly string[] {
  return complete(marked, chip).map((each) => each.label);
}

/** The text after taking the completion with that label. */
function taken(marked: string, label: string): string {
  const text = marked.replace("|", "");
  const found = complete(marked).find((each) => each.label === label);
  if (found === undefined) throw new Error(`${label} is not proposed`);
  return text.slice(0, found.edit.span.start) + found.edit.text + text.slice(found.edit.span.end);
}

describe("what may follow", () => {
  it.each([
    ["// @wire |", ["board", "ps2", "serial", "means", "encodes", "decodes", "try", "allow"]],
    ["// @wire me|", ["board", "ps2", "serial", "means", "encodes", "decodes", "try", "allow"]],
    ["// @wire board |", ["atmega328p", "atmega2560", "attiny85", "clock"]],
    ["// @wire board atmega328p |", ["clock"]],
    ["// @wire board atmega328p clock=|", ["16MHz", "8MHz", "20MHz", "12MHz", "1MHz"]],
    ["// @wire board atmega328p clock=16MHz |", []],
    ["// @wire ps2 clock=2 |", ["data", "pullups"]],
    ["// @wire ps2 pullups=|", ["internal", "external"]],
    ["/* @wire ps2 pullups=int| */", ["internal", "external"]],
    ["// @wire serial report=|", ["two-button", "wheel"]],
    ["// @wire serial line=|", ["7N1", "8N1"]],
    ["// @wire serial baud=|", ["1200", "9600"]],
    ["// @wire serial scale=|", ["1/2", "2"]],
    ["// @wire means |", ["ps2.request-hold", "ps2.reply-timeout", "serial.bit-time", "serial.baud"]],
    ["// @wire encodes |", ["two-button", "wheel", "ps2-standard"]],
    ["// @wire encodes two-button |", ["from"]],
    ["// @wire encodes two-button from |", ["x", "y", "left", "right"]],
    ["// @wire encodes two-button from x=a |", ["y", "left", "right", "into"]],
    ["// @wire decodes ps2-standard from |\nvoid f(uint8_t buf[3], int8_t *dx);", ["buf", "dx"]],
    ["// @wire encodes two-button from x=|\nvoid f(int8_t dx, int8_t dy) {", ["dx", "dy"]],
    ["// @wire encodes two-button from x=a into |\nvoid f(int8_t a, void (*send)(uint8_t));", ["a", "send"]],
    ["/**\n * @wire try |\n */", ["right", "left", "down", "up", "wheel", "press"]],
    ["// @wire try press=left,|", ["left", "right", "middle", "button4", "button5"]],
    ["// @wire allow |", ["ps2/wait-forever", "ps2/no-pullup", "serial/baud-error", "note/unattached"]],
    ["// @wire allow ps2/no-pullup |", ["because"]],
    ["// @wire allow ps2/no-pullup because |", ['"..."']],
    ['// @wire allow ps2/no-pullup because "an|', []],
    ["// @|", ["@wire"]],
    ["/** @wi| */", ["@wire"]],
    ["int a; // plain text |", []],
    ["int a|; // @wire board", []],
    ["// @wire nothing |", []],
    ["/* @wire ps2 */| int a;", []],
  ] as const)("%s", (marked, expected) => {
    expect(labels(marked)).toEqual(expected);
  });

  it("proposes the chip's pins and UARTs, and no pins where the chip is not known", () => {
    expect(labels("// @wire ps2 clock=|")).toContain("PD2");
    expect(labels("// @wire ps2 clock=|", "attiny85")).toEqual(["0", "PB0"]);
    expect(labels("// @wire serial uart=|", "atmega2560")).toEqual(["0", "1", "2", "3"]);
    const offset = "// @wire ps2 clock=".length;
    const lexed = lexFile("a.c", "// @wire ps2 clock=", "c");
    expect(completeNote(lexed, offset, { vocabulary: SMALL_VOCABULARY, chip: undefined })).toEqual([]);
  });
});

describe("what is written", () => {
  it.each([
    ["// @wi|", "@wire", "// @wire "],
    ["// @wire me|", "means", "// @wire means"],
    ["// @wire bo|ard x", "means", "// @wire means x"],
    ["// @wire ps2 cl|", "clock", "// @wire ps2 clock="],
    ["// @wire ps2 pullups=int|", "internal", "// @wire ps2 pullups=internal"],
    ["/* @wire ps2 pullups=|*/", "internal", "/* @wire ps2 pullups=internal*/"],
    [
      "// @wire encodes two-button from y=-|\nvoid f(int8_t dy);",
      "dy",
      "// @wire encodes two-button from y=-dy\nvoid f(int8_t dy);",
    ],
    ["// @wire try press=left,mi|", "middle", "// @wire try press=left,middle"],
    ["// @wire allow ps2/no-pullup because |", '"..."', '// @wire allow ps2/no-pullup because ""'],
  ])("%s with %s", (marked, label, expected) => {
    expect(taken(marked, label)).toBe(expected);
  });
});

describe("hover", () => {
  /** The hovered word and its text; `|` stands before the character under the cursor. */
  function hover(marked: string): readonly [string, string] | undefined {
    const offset = marked.indexOf("|");
    const text = marked.replace("|", "");
    const found = hoverNote(lexFile("a.c", text, "c"), offset, KNOWLEDGE);
    return found && [text.slice(found.span.start, found.span.end), found.markdown];
  }

  it.each([
    ["// @|wire ps2 clock=2", "ps2", "the pins of the PS/2 port"],
    ["// @wire p|s2 clock=2", "ps2", "the pins of the PS/2 port"],
    ["// @wire ps2 |clock=2", "clock", "Pin of the PS/2 clock"],
    ["// @wire ps2 clock=|2", "2", "about 2"],
    ["// @wire ps2 pullups=|internal", "internal", "The chip's own pull-ups"],
    ["// @wire means ps2.|request-hold", "ps2.request-hold", "All about ps2.request-hold."],
    ["// @wire board AT|mega328P", "ATmega328P", "about atmega328p"],
    ["// @wire board clock=|16MHz", "16MHz", "CPU clock with its unit"],
    ["// @wire encodes wheel |from x=dx into out", "from", "The fields and their parameters follow"],
    ["// @wire encodes wheel from |x=dx into out", "x", "field of `wheel`"],
    ["// @wire encodes wheel from y=|-dy into out", "-dy", "grows the other way"],
  ])("%s", (marked, word, part) => {
    const [under, markdown] = hover(marked) ?? [];
    expect(under).toBe(word);
    expect(markdown).toContain(part);
  });

  it("says nothing outside notes and on unknown words", () => {
    expect(hover("// plain |text")).toBeUndefined();
    expect(hover("int |a; // @wire ps2 clock=2")).toBeUndefined();
    expect(hover("// @wire nothing| here")).toBeUndefined();
  });
});
