import { describe, expect, it } from "vitest";
import { checkClock } from "../../../src-core/notes/check-clock.ts";
import { checkWires } from "../../../src-core/notes/check-wires.ts";
import { mergeWires } from "../../../src-core/notes/merge-wires.ts";
import { readNotes } from "../../../src-core/notes/read-notes.ts";
import { readSettings } from "../../../src-core/notes/settings/read-settings.ts";
import { lexFile } from "../../../src-core/reader/lexer/lex-file.ts";
import { preprocess } from "../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { SMALL_VOCABULARY } from "./small-vocabulary.ts";

function merge(text: string, json = "{}") {
  const { notes } = readNotes(lexFile("a.c", text, "c").comments, SMALL_VOCABULARY);
  return mergeWires(notes, readSettings("edgewise.json", json, SMALL_VOCABULARY).settings.wires);
}

describe("notes and edgewise.json together", () => {
  it("a note wins over edgewise.json, key by key", () => {
    const { wires, problems } = merge(
      "// @wire board clock=8MHz\n// @wire serial rts=4",
      '{"board": {"chip": "attiny85", "clock": "16MHz"}, "wires": {"serial": {"rts": "3", "line": "7N1"}}}',
    );
    expect(problems).toEqual([]);
    expect(wires).toMatchObject({
      board: { chip: { value: "attiny85" }, clockHz: { value: 8_000_000 } },
      serial: { rts: { value: "4" }, line: { value: "7N1" } },
    });
  });

  it("a note that sends by pin takes the UART of edgewise.json out", () => {
    const { wires, problems } = merge("// @wire serial tx=1", '{"wires": {"serial": {"uart": 0}}}');
    expect(problems).toEqual([]);
    expect(wires.serial).toMatchObject({ uart: undefined, tx: { value: "1" } });
  });

  it("notes may share the work and say the same twice", () => {
    const { wires, problems } = merge("// @wire ps2 clock=2\n// @wire ps2 data=3\n// @wire ps2 clock=2");
    expect(problems).toEqual([]);
    expect(wires.ps2).toMatchObject({ clock: { value: "2" }, data: { value: "3" } });
  });

  it.each([
    [
      "// @wire board atmega328p\n// @wire board attiny85",
      "attiny85",
      "two notes disagree on the chip: `attiny85` here, `atmega328p` elsewhere",
    ],
    [
      "// @wire board clock=16MHz\n// @wire board clock=8MHz",
      "8MHz",
      "two notes disagree on the clock: `8MHz` here, `16MHz` elsewhere",
    ],
    [
      "// @wire ps2 clock=2\n// @wire ps2 clock=3",
      "3",
      "two notes disagree on the pin of the PS/2 clock: `3` here, `2` elsewhere",
    ],
    [
      "// @wire serial scale=1/2\n// @wire serial scale=2/3",
      "2/3",
      "two notes disagree on the scale: `2/3` here, `1/2` elsewhere",
    ],
    [
      "// @wire serial uart=0\n// @wire serial tx=1",
      "1",
      "another note names a UART: keep `uart=0` or `tx=1`",
    ],
  ])("notes that disagree: %s", (text, under, message) => {
    const { problems } = merge(text);
    expect(problems).toMatchObject([{ rule: "note/mismatch", message, related: [{}] }]);
    expect(text.slice(problems[0]?.span.start, problems[0]?.span.end)).toBe(under);
  });
});

describe("pins and UARTs that the chip has not", () => {
  const check = (text: string, json?: string) => checkWires(merge(text, json).wires, SMALL_VOCABULARY);

  it.each([
    ["ps2 clock=PD9", "`atmega328p` has no pin `PD9`; did you mean `PD2`, `PD3` or `PD4`?", "PD2"],
    ["ps2 data=A13", "`atmega328p` has no pin `A13`; did you mean `13` or `A3`?", "13"],
    [
      "serial rts=99",
      "`atmega328p` has no pin `99`; known: `0`, `1`, `2`, `3`, `4`, `13`, `A0`, `A3`, `PD2`, `PD3`, `PD4` and `PC3`",
      undefined,
    ],
    ["serial uart=1", "`atmega328p` has no UART `1`: it has `0`", undefined],
  ])("%s", (words, message, fix) => {
    const found = check(`// @wire board atmega328p\n// @wire ${words}`);
    expect(found).toMatchObject([{ rule: "note/unknown-name", message }]);
    expect(found[0]?.fixes[0]?.edits[0]?.text).toBe(fix);
  });

  it("says what to do on a chip without a UART", () => {
    expect(check("// @wire board attiny85\n// @wire serial uart=0")).toMatchObject([
      { message: "`attiny85` has no UART `0`: it has none; name the pin that sends with `tx=`" },
    ]);
  });

  it("keeps the quotes of edgewise.json in its fix", () => {
    const json = '{"board": {"chip": "atmega328p"}, "wires": {"ps2": {"clock": "PD8"}}}';
    expect(check("", json)).toMatchObject([{ fixes: [{ edits: [{ text: '"PD2"' }] }] }]);
  });

  it.each(["ps2 clock=pd2 data=a3", "ps2 clock=D2", "serial tx=1 rts=13"])(
    "takes %s in its usual spellings",
    (words) => {
      expect(check(`// @wire board atmega328p\n// @wire ${words}`)).toEqual([]);
    },
  );

  it("says nothing where chip or pin table is not known", () => {
    expect(check("// @wire ps2 clock=PD9")).toEqual([]);
    expect(check("// @wire board atmega2560\n// @wire ps2 clock=PZ9")).toEqual([]);
  });
});

describe("a clock that differs from the code's F_CPU", () => {
  function check(text: string, json = "{}") {
    const preprocessed = preprocess({
      host: hostOfFiles({ "a.c": text }),
      mains: ["a.c"],
      prelude: [],
      language: "c",
      defines: { F_CPU: "1000000UL" },
      includePaths: [],
      standIns: () => undefined,
      cache: new PreprocessCache(),
    });
    return checkClock(merge(text, json).wires, [preprocessed, preprocessed]);
  }

  it.each(["8000000", "8000000UL", "(8000000UL)", "8000000L", "(8 * 1000000UL)", "8e6"])(
    "#define F_CPU %s",
    (body) => {
      const found = check(`// @wire board clock=16MHz\n#undef F_CPU\n#define F_CPU ${body}\n`);
      expect(found).toMatchObject([
        {
          rule: "note/mismatch",
          message: "the clock is said to be 16MHz, but the code defines F_CPU as 8MHz",
          related: [{ message: "`F_CPU` is 8MHz here" }],
          fixes: [{ edits: [{ text: "8MHz" }] }],
        },
      ]);
    },
  );

  it.each(["16000000UL", "BOARD_CLOCK", "(BASE << 3)"])("says nothing on #define F_CPU %s", (body) => {
    expect(check(`// @wire board clock=16MHz\n#undef F_CPU\n#define F_CPU ${body}\n`)).toEqual([]);
  });

  it("says nothing on an F_CPU from outside, or without a clock", () => {
    expect(check("// @wire board clock=16MHz")).toEqual([]);
    expect(check("#undef F_CPU\n#define F_CPU 8000000\n")).toEqual([]);
  });
});
