import { describe, expect, it } from "vitest";
import type { Span } from "../../../src-core/finding.ts";
import { allowanceOf } from "../../../src-core/notes/attachment/allowance.ts";
import { fileCode } from "../../../src-core/notes/attachment/file-code.ts";
import { completeNote } from "../../../src-core/notes/completion/complete-note.ts";
import { completeSettings, hoverSettings } from "../../../src-core/notes/completion/complete-settings.ts";
import { hoverNote } from "../../../src-core/notes/completion/hover-note.ts";
import { mergeWires } from "../../../src-core/notes/merge-wires.ts";
import { readNotes } from "../../../src-core/notes/read-notes.ts";
import { readSettings } from "../../../src-core/notes/settings/read-settings.ts";
import { NO_WIRES } from "../../../src-core/notes/wires.ts";
import { lexFile } from "../../../src-core/reader/lexer/lex-file.ts";
import { randomNumbers, randomText } from "./random-text.ts";
import { SMALL_VOCABULARY } from "./small-vocabulary.ts";

const NOTE_PIECES: readonly string[] = [
  ..."@wire |@Wire|@wire|board |ps2 |serial |means |encodes |decodes |try |allow |from |into |because ".split(
    "|",
  ),
  ..."atmega328p |clock=|16MHz |two-button |x=|-dy |b.1 |out |ps2.request-hold |ps2/wait-forever ".split("|"),
  ...['"', '"why" ', "\\", "=", "= ", ",", ".", "->", "::", "-", "*", "*/", "/*", "//", "/**"],
  ...[
    "\n",
    "\n * ",
    "\r\n",
    "\t",
    " ",
    "\0",
    "\uD800",
    "ü",
    "😀",
    "#define A 1\n",
    "void f(int a) {",
    "}",
    "(",
    ")",
    ";",
  ],
];

const JSON_PIECES: readonly string[] = [
  ...[
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    '"',
    '"board"',
    '"chip"',
    '"clock"',
    '"wires"',
    '"ps2"',
    '"serial"',
    '"rules"',
  ],
  ...[
    '"sources"',
    '"defines"',
    '"16MHz"',
    '"atmega328p"',
    '"ps2/wait-forever"',
    "1200",
    "-1e999",
    "0.5",
    "null",
  ],
  ...["true", '"\\u12"', "\\", " ", "\n", "//", "/*", "\uFEFF", "\uD800", '"__proto__"', '"uart"', '"tx"'],
];

function expectWithin(text: string, span: Span): void {
  expect(span.start).toBeGreaterThanOrEqual(0);
  expect(span.end).toBeGreaterThanOrEqual(span.start);
  expect(span.end).toBeLessThanOrEqual(text.length);
}

describe("random text", () => {
  it("in notes", () => {
    const random = randomNumbers(2026);
    for (let round = 0; round < 3000; round++) {
      const opening = round % 2 === 0 ? "// @wire " : "/* @wire ";
      const text = opening + randomText(random, NOTE_PIECES, 1 + Math.floor(random() * 24));
      const lexed = lexFile("a.c", text, round % 3 === 0 ? "c" : "c++");
      const { notes, problems } = readNotes(lexed.comments, SMALL_VOCABULARY);
      const code = fileCode(lexed);
      for (const note of notes) {
        expectWithin(text, note.span);
        if (note.kind === "allow") allowanceOf(note, code);
      }
      for (const problem of [...problems, ...mergeWires(notes, NO_WIRES).problems]) {
        expectWithin(text, problem.span);
        for (const fix of problem.fixes) for (const edit of fix.edits) expectWithin(text, edit.span);
      }
      const offset = Math.floor(random() * (text.length + 1));
      const knowledge = { vocabulary: SMALL_VOCABULARY, chip: round % 5 === 0 ? undefined : "atmega328p" };
      for (const each of completeNote(lexed, offset, knowledge)) expectWithin(text, each.edit.span);
      hoverNote(lexed, offset, knowledge);
    }
  });

  it("in edgewise.json", () => {
    const random = randomNumbers(1987);
    for (let round = 0; round < 1500; round++) {
      const text = `{${randomText(random, JSON_PIECES, Math.floor(random() * 30))}`;
      const { problems } = readSettings("edgewise.json", text, SMALL_VOCABULARY);
      for (const problem of problems) expectWithin(text, problem.span);
      const offset = Math.floor(random() * (text.length + 1));
      for (const each of completeSettings("edgewise.json", text, offset, SMALL_VOCABULARY)) {
        expectWithin(text, each.edit.span);
      }
      hoverSettings("edgewise.json", text, offset, SMALL_VOCABULARY);
    }
  });
});
