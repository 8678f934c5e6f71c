import { describe, expect, it } from "vitest";
import { readSettings, type SettingsRead } from "../../../../src-core/notes/settings/read-settings.ts";
import { NO_WIRES } from "../../../../src-core/notes/wires.ts";
import { SMALL_VOCABULARY } from "../small-vocabulary.ts";

function read(text: string): SettingsRead {
  return readSettings("ferry/edgewise.json", text, SMALL_VOCABULARY);
}

/** The whole of edgewise.json with every key, as the annotation schema gives it. */
const WHOLE = `{ "$schema": "./edgewise.schema.json", "board": { "chip": "atmega328p", "clock": "16MHz" },
  "sources": ["*.ino", "src/**/*.c"], "defines": { "BAUD": "1200" }, "includePaths": ["lib"],
  "wires": { "ps2": { "clock": "2", "data": "3", "pullups": "internal" },
             "serial": { "uart": 0, "rts": "4", "report": "two-button", "shifter": "inverting", "baud": 1200, "line": "7N1", "scale": "3/4" } },
  "rules": { "ps2/wait-forever": "warning" },
  "simulate": { "strokes": [], "mice": [], "pcs": [] } }`;

describe("a sound edgewise.json", () => {
  it("gives every value", () => {
    const { settings, problems } = read(WHOLE);
    expect(problems).toEqual([]);
    expect(settings).toMatchObject({
      file: "ferry/edgewise.json",
      wires: {
        board: { chip: { value: "atmega328p" }, clockHz: { value: 16_000_000 } },
        ps2: { clock: { value: "2" }, data: { value: "3" }, pullups: { value: "internal" } },
        serial: {
          uart: { value: 0 },
          tx: undefined,
          rts: { value: "4" },
          dtr: undefined,
          report: { value: "two-button" },
          shifter: { value: "inverting" },
          baud: { value: 1200 },
          line: { value: "7N1" },
          scale: { value: 0.75 },
        },
      },
      sources: [{ value: "*.ino" }, { value: "src/**/*.c" }],
      includePaths: [{ value: "lib" }],
      simulate: { strokes: [], mice: [], pcs: [], ownStrokes: new Map() },
    });
    expect([...settings.defines].map(([name, said]) => [name, said.value])).toEqual([["BAUD", "1200"]]);
    expect([...settings.rules].map(([rule, said]) => [rule, said.value])).toEqual([
      ["ps2/wait-forever", "warning"],
    ]);
  });

  it("says where each value stands, quotes included", () => {
    const span = read(WHOLE).settings.wires.board.clockHz?.span;
    expect(span && WHOLE.slice(span.start, span.end)).toBe('"16MHz"');
    expect(span?.file).toBe("ferry/edgewise.json");
  });

  it("may say nothing, and tells no sources from none", () => {
    expect(read("{}")).toMatchObject({ settings: { wires: NO_WIRES, sources: undefined }, problems: [] });
    expect(read('{"sources": []}').settings.sources).toEqual([]);
  });

  it("takes chips as printed, and a byte order mark", () => {
    const { settings, problems } = read('\uFEFF{"board": {"chip": "ATmega328P"}}');
    expect(problems).toEqual([]);
    expect(settings.wires.board.chip?.value).toBe("atmega328p");
  });
});

/** [file, text under the problem, message, proposed JSON] */
const FAULTS: readonly (readonly [string, string, string, string?])[] = [
  ["", "", "the file is empty; an empty project is `{}`"],
  ["[]", "[]", "expected an object `{...}`"],
  ["{", "", "not valid JSON: expected `}`"],
  ['{"rules": {},}', "}", "not valid JSON: expected a name in double quotes"],
  ['{"rules" {}}', "{", "not valid JSON: expected `:` after the name"],
  ['{"rules": {} "defines": {}}', '"defines"', "not valid JSON: expected `,` before this"],
  ["{ // why\n}", "// why", "not valid JSON: comments are not allowed here"],
  ["{} {}", "{", "not valid JSON: nothing may follow the closing `}`"],
  ['{"borad": {}}', '"borad"', "there is no `borad`; did you mean `board`?", '"board"'],
  [
    '{"colour": 1}',
    '"colour"',
    "there is no `colour`; known: `$schema`, `board`, `sources`, `defines`, `includePaths`, `wires`, `rules` and `simulate`",
  ],
  ['{"board": "atmega328p"}', '"atmega328p"', "`board`: expected an object `{...}`"],
  [
    '{"board": {"chip": "atmega382p"}}',
    '"atmega382p"',
    "`board.chip`: `atmega382p` is not known; did you mean `atmega328p`?",
    '"atmega328p"',
  ],
  [
    '{"board": {"clock": 16000000}}',
    "16000000",
    '`board.clock`: expected a clock with its unit (Hz, kHz or MHz), such as "16MHz", in double quotes',
    '"16MHz"',
  ],
  [
    '{"board": {"clock": "16mhz"}}',
    '"16mhz"',
    '`board.clock`: expected a clock with its unit (Hz, kHz or MHz), such as "16MHz", not `16mhz`; did you mean `16MHz`?',
    '"16MHz"',
  ],
  ['{"sources": "*.c"}', '"*.c"', "`sources`: expected a list `[...]`", '["*.c"]'],
  ['{"sources": [""]}', '""', "`sources[0]`: expected text that is not empty, not ``"],
  ['{"defines": {"BAUD": 1200}}', "1200", "`defines.BAUD`: expected text, in double quotes", '"1200"'],
  [
    '{"defines": {"F(x)": ""}}',
    '"F(x)"',
    '`defines`: expected the name of a macro without parameters, such as "F_CPU", not `F(x)`',
  ],
  [
    '{"wires": {"ps2": {"clock": 2}}}',
    "2",
    '`wires.ps2.clock`: expected a board number or a port bit, such as "PD2", in double quotes',
    '"2"',
  ],
  [
    '{"wires": {"ps2": {"pullups": "interal"}}}',
    '"interal"',
    "`wires.ps2.pullups`: `interal` is not known; did you mean `internal`?",
    '"internal"',
  ],
  [
    '{"wires": {"serial": {"uart": "0"}}}',
    '"0"',
    "`wires.serial.uart`: expected a whole number from 0 to 9, without quotes",
    "0",
  ],
  [
    '{"wires": {"serial": {"baud": 1200.5}}}',
    "1200.5",
    "`wires.serial.baud`: expected a whole number from 1 to 9999999",
  ],
  [
    '{"wires": {"serial": {"scale": "1/0"}}}',
    '"1/0"',
    '`wires.serial.scale`: expected a number or a fraction of whole numbers up to 999, such as "1/2", not `1/0`',
  ],
  [
    '{"wires": {"serial": {"line": "7n1"}}}',
    '"7n1"',
    '`wires.serial.line`: expected data bits, parity and stop bits, such as "7N1", not `7n1`; did you mean `7N1`?',
    '"7N1"',
  ],
  [
    '{"wires": {"serial": {"report": "ps2-standard"}}}',
    '"ps2-standard"',
    "`wires.serial.report`: `ps2-standard` is not known; known: `two-button` and `wheel`",
  ],
  [
    '{"wires": {"serial": {"uart": 0, "tx": "1"}}}',
    '"tx": "1"',
    "`wires.serial`: `uart` and `tx` exclude each other: keep one of them",
  ],
  [
    '{"rules": {"ps2/wait-forver": "off"}}',
    '"ps2/wait-forver"',
    "`rules`: there is no `ps2/wait-forver`; did you mean `ps2/wait-forever`?",
    '"ps2/wait-forever"',
  ],
  [
    '{"rules": {"ps2/wait-forever": "of"}}',
    '"of"',
    "`rules.ps2/wait-forever`: `of` is not known; did you mean `off`?",
    '"off"',
  ],
  [
    '{"rules": {"ps2/wait-forever": false}}',
    "false",
    '`rules.ps2/wait-forever`: expected one of "error", "warning", "info", "off", in double quotes',
  ],
  ['{"board": {}, "board": {}}', '"board"', "`board` is said twice"],
  [
    '{"simulate": {"mice": [3]}}',
    "3",
    '`simulate.mice[0]`: expected one of "plain", "wheel", in double quotes',
  ],
  [
    '{"simulate": {"mice": ["plian"]}}',
    '"plian"',
    "`simulate.mice[0]`: `plian` is not known; did you mean `plain`?",
    '"plain"',
  ],
  [
    '{"simulate": {"pcs": ["HURRIED"]}}',
    '"HURRIED"',
    "`simulate.pcs[0]`: `HURRIED` is not known; did you mean `hurried`?",
    '"hurried"',
  ],
  [
    '{"simulate": {"ownStrokes": {"quay": []}, "strokes": ["circle", "quya"]}}',
    '"quya"',
    "`simulate.strokes[1]`: `quya` is not known; did you mean `quay`?",
    '"quay"',
  ],
  [
    '{"simulate": {"ownStrokes": {"To Quay": []}}}',
    '"To Quay"',
    '`simulate.ownStrokes`: expected a name of small letters, digits and hyphens, such as "zigzag", not `To Quay`',
  ],
  [
    '{"simulate": {"ownStrokes": {"quay": [{"left": 3}]}}}',
    '"left"',
    "`simulate.ownStrokes.quay[0]`: there is no `left`; known: `ms`, `right`, `down`, `wheel`, `press` and `release`",
  ],
  [
    '{"simulate": {"ownStrokes": {"quay": [{"right": 1.5}]}}}',
    "1.5",
    "`simulate.ownStrokes.quay[0].right`: expected a whole number from -100000 to 100000",
  ],
  [
    '{"simulate": {"ownStrokes": {"quay": [{"press": ["lef"]}]}}}',
    '"lef"',
    "`simulate.ownStrokes.quay[0].press[0]`: `lef` is not known; did you mean `left`?",
    '"left"',
  ],
  [
    '{"simulate": {"ownStrokes": {"quay": [{"ms": -1}]}}}',
    "-1",
    "`simulate.ownStrokes.quay[0].ms`: expected a whole number from 0 to 600000",
  ],
];

describe("faults of an edgewise.json, each with its place and what would be right", () => {
  for (const [text, under, message, suggestion] of FAULTS) {
    it(text, () => {
      const { problems } = read(text);
      expect(problems.map((problem) => [problem.message, problem.suggestion])).toEqual([
        [message, suggestion],
      ]);
      const { start, end } = problems[0]?.span ?? { start: -1, end: -1 };
      expect(text.slice(start, end)).toBe(under);
    });
  }

  it("leaves the faulty value out and keeps the rest", () => {
    const { settings } = read(
      '{"board": {"chip": "z80", "clock": "8MHz"}, "wires": {"serial": {"uart": 0, "tx": "1"}}}',
    );
    expect(settings.wires.board.chip).toBeUndefined();
    expect(settings.wires.board.clockHz?.value).toBe(8_000_000);
    expect(settings.wires.serial).toMatchObject({ uart: { value: 0 }, tx: undefined });
  });

  it("leaves a stroke with a faulty step out whole", () => {
    const { settings } = read(
      '{"simulate": {"ownStrokes": {"quay": [{"right": 1}, {"down": "x"}], "pier": [{"right": 2}]}}}',
    );
    expect([...settings.simulate.ownStrokes.keys()]).toEqual(["pier"]);
  });

  it("reads on behind broken JSON", () => {
    const { settings, problems } = read('{"board": {"chip": "attiny85"} "rules": {');
    expect(settings.wires.board.chip?.value).toBe("attiny85");
    expect(problems).toHaveLength(1);
  });

  it("refuses bottomless nesting with one problem", () => {
    expect(read("[".repeat(100_000)).problems.map((problem) => problem.message)).toEqual([
      "nested more than 64 levels deep",
    ]);
  });

  it("takes names of Object's own for unknown names", () => {
    expect(read('{"constructor": {}, "__proto__": {}}').problems).toHaveLength(2);
  });
});
