import { describe, expect, it } from "vitest";
import { type NotesRead, readNotes } from "../../../src-core/notes/read-notes.ts";
import { lexFile } from "../../../src-core/reader/lexer/lex-file.ts";
import { SMALL_VOCABULARY } from "./small-vocabulary.ts";

function read(text: string): NotesRead {
  return readNotes(lexFile("ferry.c", text, "c++").comments, SMALL_VOCABULARY);
}

/** [note, rule, text under the finding, message, what the fix writes] */
type Fault = readonly [string, string, string, string, string?];

const SYNTAX: readonly Fault[] = [
  [
    "@wire",
    "note/syntax",
    "@wire",
    "`@wire` needs a directive: `board`, `ps2`, `serial`, `means`, `encodes`, `decodes`, `try` or `allow`",
  ],
  [
    "@wire clock=16MHz",
    "note/syntax",
    "clock=16MHz",
    "`@wire` needs a directive: `board`, `ps2`, `serial`, `means`, `encodes`, `decodes`, `try` or `allow`",
  ],
  ["@Wire ps2 clock=2", "note/syntax", "@Wire", "a note starts with `@wire` in lower case", "@wire"],
  [
    "@wire ps2",
    "note/syntax",
    "ps2",
    "`ps2` says nothing yet; write for instance `@wire ps2 clock=2 data=3 pullups=internal`",
  ],
  [
    "@wire means",
    "note/syntax",
    "means",
    "`means` needs a quantity of the model, as in `@wire means ps2.request-hold`",
  ],
  [
    "@wire means request",
    "note/syntax",
    "request",
    "`request` is not a quantity of the model, such as `ps2.request-hold`",
  ],
  [
    "@wire ps2 clock = 2",
    "note/syntax",
    "clock = 2",
    "`clock` is not a `key=value` (no spaces around `=` or inside a value)",
  ],
  [
    "@wire ps2 clock= data=3",
    "note/syntax",
    "clock=",
    "`clock=` is not a `key=value` (no spaces around `=`)",
  ],
  [
    "@wire board atmega328p clock=16",
    "note/syntax",
    "16",
    "`clock` needs a clock with its unit (Hz, kHz or MHz), such as `16MHz`",
    "16MHz",
  ],
  [
    "@wire board atmega328p clock=16000000",
    "note/syntax",
    "16000000",
    "`clock` needs a clock with its unit (Hz, kHz or MHz), such as `16MHz`",
    "16MHz",
  ],
  [
    "@wire board atmega328p clock=fast",
    "note/syntax",
    "fast",
    "`clock` needs a clock with its unit (Hz, kHz or MHz), such as `16MHz`",
  ],
  [
    "@wire board atmega328p clock=0MHz",
    "note/syntax",
    "0MHz",
    "`clock` needs a clock with its unit (Hz, kHz or MHz), such as `16MHz`",
  ],
  [
    "@wire serial line=7n1",
    "note/syntax",
    "7n1",
    "`7n1` is not data bits, parity and stop bits, such as `7N1`",
    "7N1",
  ],
  ["@wire serial baud=fast", "note/syntax", "fast", "`fast` is not a whole number of baud, such as `1200`"],
  [
    "@wire serial scale=0.5",
    "note/syntax",
    "0.5",
    "`0.5` is not a number or a fraction of whole numbers up to 999, such as `1/2`",
  ],
  ["@wire serial uart=x", "note/syntax", "x", "`x` is not the number of a UART, such as `0`"],
  ["@wire ps2 clock=two", "note/syntax", "two", "`two` is not a board number or a port bit, such as `PD2`"],
  ["@wire try right=far", "note/syntax", "far", "`far` is not a whole number of counts, such as `12`"],
  [
    "@wire encodes two-button x=dx into out",
    "note/syntax",
    "x=dx",
    "`from` is missing, as in `@wire encodes two-button from x=dx y=-dy left=lb right=rb into out`",
  ],
  [
    "@wire encodes two-button from into out",
    "note/syntax",
    "into",
    "`encodes` needs `field=name`, as in `@wire encodes two-button from x=dx y=-dy left=lb right=rb into out`",
  ],
  [
    "@wire encodes two-button from x=dx",
    "note/syntax",
    "x=dx",
    "`into` is missing, as in `@wire encodes two-button from x=dx y=-dy left=lb right=rb into out`",
  ],
  [
    "@wire encodes two-button from x=dx into",
    "note/syntax",
    "into",
    "`encodes` needs a name of the code, as in `@wire encodes two-button from x=dx y=-dy left=lb right=rb into out`",
  ],
  [
    "@wire encodes two-button form x=dx into out",
    "note/syntax",
    "form",
    "expected `from` instead of `form`",
    "from",
  ],
  [
    "@wire encodes two-button from x=d[0] into out",
    "note/syntax",
    "d[0]",
    "`d[0]` is not a name of the code, with `-` before it or a bit number behind it where needed, such as `-dy`",
  ],
  [
    "@wire decodes ps2-standard from buf into left=b.32",
    "note/syntax",
    "b.32",
    "`b.32` is not a name of the code, with `-` before it or a bit number behind it where needed, such as `-dy`",
  ],
  [
    "@wire allow ps2/wait-forever",
    "note/syntax",
    "ps2/wait-forever",
    'the reason is missing: write `because "..."`',
  ],
  [
    "@wire allow ps2/wait-forever because the mouse is there",
    "note/syntax",
    "the mouse is there",
    "the reason stands in quotes",
    '"the mouse is there"',
  ],
  ['@wire allow ps2/wait-forever because "it', "note/syntax", '"it', 'the closing `"` is missing', '"'],
  [
    '@wire allow ps2/wait-forever because " "',
    "note/syntax",
    '" "',
    '` ` is not a reason in quotes, such as `"the mouse is always there"`',
  ],
  [
    "@wire means ps2.request-hold ps2.reply-timeout",
    "note/syntax",
    "ps2.reply-timeout",
    "`ps2.reply-timeout` is too much: `means` ends before it",
  ],
  [
    "@wire means ps2.request-hold @wire try up=1",
    "note/syntax",
    "@wire try up=1",
    "a further note goes on a line of its own",
  ],
];

const NAMES: readonly Fault[] = [
  [
    "@wire baord atmega328p",
    "note/unknown-name",
    "baord",
    "no directive is called `baord`; did you mean `board`?",
    "board",
  ],
  [
    "@wire plug in=3",
    "note/unknown-name",
    "plug",
    "no directive is called `plug`; known: `board`, `ps2`, `serial`, `means`, `encodes`, `decodes`, `try` and `allow`",
  ],
  [
    "@wire board atmega382p",
    "note/unknown-name",
    "atmega382p",
    "no chip is called `atmega382p`; did you mean `atmega328p`?",
    "atmega328p",
  ],
  [
    "@wire board z80",
    "note/unknown-name",
    "z80",
    "no chip is called `z80`; known: `atmega328p`, `atmega2560` and `attiny85`",
  ],
  [
    "@wire board atmega328p clock=16mhz",
    "note/unknown-name",
    "16mhz",
    "no unit is called `mhz`; a clock has Hz, kHz or MHz, such as `16MHz`",
    "16MHz",
  ],
  [
    "@wire board atmega328p clock=16GHz",
    "note/unknown-name",
    "16GHz",
    "no unit is called `GHz`; a clock has Hz, kHz or MHz, such as `16MHz`",
  ],
  [
    "@wire ps2 clok=2",
    "note/unknown-name",
    "clok",
    "`ps2` has no key `clok`; did you mean `clock`?",
    "clock",
  ],
  [
    "@wire ps2 rts=2",
    "note/unknown-name",
    "rts",
    "`ps2` has no key `rts`; known: `clock`, `data` and `pullups`",
  ],
  [
    "@wire ps2 pullups=interal",
    "note/unknown-name",
    "interal",
    "`pullups` is `internal` or `external`, not `interal`",
    "internal",
  ],
  [
    "@wire serial report=two-buttons",
    "note/unknown-name",
    "two-buttons",
    "no report layout is called `two-buttons`; did you mean `two-button`?",
    "two-button",
  ],
  [
    "@wire serial report=ps2-standard",
    "note/unknown-name",
    "ps2-standard",
    "`ps2-standard` is a layout of the PS/2 side; the serial side has `two-button`, `wheel`",
  ],
  [
    "@wire means serial.bit-tme",
    "note/unknown-name",
    "serial.bit-tme",
    "no quantity is called `serial.bit-tme`; did you mean `serial.bit-time`?",
    "serial.bit-time",
  ],
  [
    '@wire allow ps2/wait-forver because "x"',
    "note/unknown-name",
    "ps2/wait-forver",
    "no rule is called `ps2/wait-forver`; did you mean `ps2/wait-forever`?",
    "ps2/wait-forever",
  ],
  [
    "@wire encodes two-button from wheel=w into out",
    "note/unknown-name",
    "wheel",
    "`two-button` has no field `wheel`; known: `x`, `y`, `left` and `right`",
  ],
  [
    "@wire encodes two-button from rigth=r into out",
    "note/unknown-name",
    "rigth",
    "`two-button` has no field `rigth`; did you mean `right`?",
    "right",
  ],
  [
    "@wire try rihgt=12",
    "note/unknown-name",
    "rihgt",
    "`try` has no key `rihgt`; did you mean `right`?",
    "right",
  ],
  [
    "@wire try press=left,middel",
    "note/unknown-name",
    "middel",
    "no button is called `middel`; did you mean `middle`?",
    "middle",
  ],
];

const CONTRADICTIONS: readonly Fault[] = [
  ["@wire ps2 clock=2 clock=3", "note/mismatch", "clock=3", "`clock` is said twice in this note"],
  [
    "@wire encodes two-button from x=a x=b into out",
    "note/mismatch",
    "x=b",
    "`x` is said twice in this note",
  ],
  ["@wire serial uart=0 tx=1", "note/mismatch", "1", "`uart` and `tx` exclude each other: keep one of them"],
  [
    "@wire try left=1 right=2",
    "note/mismatch",
    "2",
    "`right` and `left` exclude each other: keep one of them",
  ],
];

describe.each([
  ["text that cannot be split", SYNTAX],
  ["names that do not exist", NAMES],
  ["contradictions within one note", CONTRADICTIONS],
])("%s", (_, faults) => {
  it.each(faults)("%s", (note, rule, under, message, fix) => {
    const text = `int before;\n// ${note}\n`;
    const { problems } = read(text);
    expect(problems).toHaveLength(1);
    const [problem] = problems;
    expect(problem).toMatchObject({ rule, message });
    expect(text.slice(problem?.span.start, problem?.span.end)).toBe(under);
    expect(problem?.fixes.map((each) => each.edits.map((edit) => edit.text).join())).toEqual(
      fix === undefined ? [] : [fix],
    );
  });
});

describe("what is left of a faulty note", () => {
  it("keeps the keys that were understood", () => {
    const { notes, problems } = read("// @wire serial uart=0 speed=1200 line=7X1 rts=4");
    expect(problems).toHaveLength(2);
    expect(notes).toMatchObject([
      {
        kind: "serial",
        serial: { uart: { value: 0 }, rts: { value: "4" }, line: undefined, baud: undefined },
      },
    ]);
  });

  it("keeps the fields that were understood", () => {
    const { notes } = read("// @wire encodes two-button from x=dx wheel=w into out");
    expect(notes).toMatchObject([{ kind: "encodes", fields: [{ field: { value: "x" } }] }]);
  });

  it.each([
    "means ps2.nothing-such",
    "allow ps2/wait-forever",
    "encodes nothing from x=dx into out",
    "decodes ps2-standard",
  ])("drops a note that lacks what it cannot do without: %s", (note) => {
    expect(read(`// @wire ${note}`).notes).toEqual([]);
  });

  it("goes on with the note when only the word between is misspelt", () => {
    expect(read("// @wire encodes two-button form x=dx inot out").notes).toMatchObject([{ kind: "encodes" }]);
  });

  it("writes a fix that mends the note", () => {
    const text = "// @wire board atmega382p clock=16mhz";
    let mended = text;
    const fixes = read(text).problems.flatMap((problem) => problem.fixes);
    for (const { edits } of [...fixes].reverse()) {
      for (const { span, text: put } of edits)
        mended = mended.slice(0, span.start) + put + mended.slice(span.end);
    }
    expect(mended).toBe("// @wire board atmega328p clock=16MHz");
    expect(read(mended).problems).toEqual([]);
  });

  it("recognises a misspelt directive behind other text", () => {
    expect(read("// held long enough. @wire maens ps2.request-hold").problems).toMatchObject([
      { rule: "note/unknown-name", message: "no directive is called `maens`; did you mean `means`?" },
    ]);
  });
});
