import { beforeAll, describe, expect, test } from "vitest";
import { judgeRun } from "../../../src-core/bench/verdicts/judge-run.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { type Style, styles } from "../../firmwares/planted/planted-fault.ts";
import { filesOf } from "../../firmwares/wrong-version.ts";
import { loadGrammar } from "../../src-core/reader/syntax/load-grammar.ts";
import { compileStyle, targets } from "./compile-style.ts";
import { type Cell, runCompiled } from "./run-compiled.ts";
import { wirings } from "./wirings.ts";

const grammar = await loadGrammar();

const compared: readonly Cell[] = [
  { mouse: "plain", pc: "rts-toggle", stroke: "nudge" },
  { mouse: "asks-for-resend", pc: "second-reset", stroke: "click" },
];

/**
 * How far apart a byte may begin, in ms: a turn of what the code does over and over, at whose other end the two may be. That is
 * the main loop, with the release and the hold of the clock where the mouse is polled, a tick of 833 us where a timer makes the
 * bits, and a question with its answer where the mouse is asked for each report.
 */
const turns = {
  "busy-wait-c": 1,
  "class-sketch": 0.3,
  "clock-interrupt-c": 0.3,
  "remote-polling-c": 25,
  "tiny-usi": 0.9,
  "usart-ring-cpp": 0.3,
} as const;

/**
 * How much sooner or later the mouse is ready, in ms, where that is more than a turn: the sketch sets it up from millis(), and the
 * two have been measured 11.9 ms apart then.
 */
const strokeShift: Partial<Readonly<Record<Style, number>>> = { "class-sketch": 12 };

// The compiled image is the reference: what avr-gcc makes of the same sources, on the instructions of avr8js.
describe.each(styles)("%s, compiled without a warning", (style) => {
  const files = filesOf(style);
  let image: Uint16Array = new Uint16Array(0);
  beforeAll(async () => {
    image = await compileStyle(files, targets[style]);
  });

  test("passes with the plain mouse and a flick", () => {
    const cell = { mouse: "plain", pc: "rts-toggle", stroke: "flick" };
    const compiled = runCompiled(image, targets[style], wirings[style], cell);
    expect(compiled.pc.bytes.length).toBeGreaterThan(5);
    expect(judgeRun(compiled).failures).toEqual([]);
  });

  test.each(compared)("$mouse at $pc, $stroke: passes, and sends what its sources send", (cell) => {
    const compiled = runCompiled(image, targets[style], wirings[style], cell);
    expect(judgeRun(compiled).failures).toEqual([]);
    const service = createService({ host: hostOfFiles(files), grammar, startName: style });
    const result = service.simulate(service.projectsAt(".")[0]?.id ?? "", { ...cell, seed: 1 });
    if (result.kind === "cannot") throw new Error(result.message);
    const { serialBytes } = result.run.details;
    expect(serialBytes.map(({ byte }) => byte)).toEqual(compiled.pc.bytes.map(({ value }) => value));
    expect(serialBytes.length).toBeGreaterThan(3);
    const behind = serialBytes.map(({ from }, index) => (from - (compiled.pc.bytes[index]?.from ?? 0)) / 1e9);
    const shift = behind.findLast((each) => Math.abs(each) > turns[style]) ?? 0;
    expect(Math.abs(shift)).toBeLessThanOrEqual(strokeShift[style] ?? 0);
    // A stroke begins when the mouse is ready, and takes all that follows with it.
    const apart = behind.map((each) => Math.min(Math.abs(each), Math.abs(each - shift)));
    expect(Math.max(...apart), `${apart}`).toBeLessThan(turns[style]);
  });
});
