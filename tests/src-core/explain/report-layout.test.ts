import { expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { encoderFirmware, rightMark, wrongMark } from "../../server/built/encoder-firmware.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

/** The hover at the name of the first function called so, before and after the firmware was tried. */
function hovers(text: string, name: string) {
  const service = createService({ host: hostOfFiles({ "p/main.c": text }), grammar, startName: "" });
  const project = service.projectsAt("p")[0]?.id ?? "";
  const hover = () => service.hover(project, "p/main.c", text.indexOf(name) + 1)?.markdown ?? "";
  const before = hover();
  service.tryOut(project);
  return { before, after: hover() };
}

/** The rows of the table, blanks made one. */
function rows(markdown: string): readonly string[] {
  const table = markdown.match(/```text\n([^`]*)\n```/)?.[1] ?? "";
  return table.split("\n").map((line) => line.trim().replace(/ +/g, " "));
}

// mouse(4) of the Linux man-pages, table of the three-byte packet: byte 1 is 1 lb rb dy7 dy6 dx7 dx6, byte 2 is 0 and dx5 to
// dx0, byte 3 is 0 and dy5 to dy0.
const required = [
  "bit 6 5 4 3 2 1 0",
  "byte 1 1 left right y7 y6 x7 x6",
  "byte 2 0 x5 x4 x3 x2 x1 x0",
  "byte 3 0 y5 y4 y3 y2 y1 y0",
];

test("before it was run there is the required layout alone, and the hover says so", () => {
  const { before } = hovers(encoderFirmware(rightMark), "encode(");
  expect(before).toContain("**encode builds a two-button report**");
  expect(rows(before)).toEqual(required);
  expect(before).toContain("not known before it was run");
});

test("a right encoder makes each bit as required", () => {
  const { after } = hovers(encoderFirmware(rightMark), "encode(");
  expect(rows(after)).toEqual([
    "bit 6 5 4 3 2 1 0",
    "byte 1 required 1 left right y7 y6 x7 x6",
    "found 1 left right y7 y6 x7 x6",
    "byte 2 required 0 x5 x4 x3 x2 x1 x0",
    "found 0 x5 x4 x3 x2 x1 x0",
    "byte 3 required 0 y5 y4 y3 y2 y1 y0",
    "found 0 y5 y4 y3 y2 y1 y0",
  ]);
  expect(after).toContain("every bit as required");
});

test("bits that differ are marked: the mark is missing, the buttons are exchanged, x reaches bit 6", () => {
  const text = encoderFirmware(wrongMark)
    .replace("left ? 0x20", "left ? 0x10")
    .replace("right ? 0x10", "right ? 0x20")
    .replace("dx & 0x3F", "dx & 0x7F");
  const { after } = hovers(text, "encode(");
  expect(rows(after)).toEqual([
    "bit 6 5 4 3 2 1 0",
    "byte 1 required 1 left right y7 y6 x7 x6",
    "found 0 right left y7 y6 x7 x6",
    "^ ^^^^^ ^^^^",
    "byte 2 required 0 x5 x4 x3 x2 x1 x0",
    "found x6 x5 x4 x3 x2 x1 x0",
    "^^",
    "byte 3 required 0 y5 y4 y3 y2 y1 y0",
    "found 0 y5 y4 y3 y2 y1 y0",
  ]);
  // Each mark stands below the word that it is about.
  const table = after.split("```")[1]?.split("\n") ?? [];
  const found = table.findIndex((line) => line.includes("found"));
  expect(table[found + 1]?.indexOf("^")).toBe(table[found]?.indexOf("0  "));
  expect(after).toContain("4 bits differ");
});

test("a call of it says the same, and one that cannot be run says that", () => {
  const called = `${encoderFirmware(rightMark)}\nvoid go(uint8_t *b) { encode/**/(b, 0, 0, 0, 0); }\n`;
  expect(rows(hovers(called, "encode/**/").after)).toHaveLength(7);
  const endless = hovers(encoderFirmware(rightMark, "for (;;) { }"), "encode(");
  expect(rows(endless.after)).toEqual(required);
  expect(endless.after).toContain("could not be run");
});

test("a decoder's name shows the layout that it takes apart", () => {
  const text = `#include <stdint.h>
// @wire decodes two-button from b into x=x
void take(const uint8_t *b, int8_t *x) { *x = (b[0] << 6) | (b[1] & 0x3F); }
`;
  const { after } = hovers(text, "take(");
  expect(after).toContain("**take takes apart a two-button report**");
  expect(rows(after)).toEqual(required);
});
