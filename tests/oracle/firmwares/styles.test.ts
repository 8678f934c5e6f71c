import { beforeAll, describe, expect, test } from "vitest";
import { judgeRun } from "../../../src-core/bench/verdicts/judge-run.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { styles } from "../../firmwares/planted/planted-fault.ts";
import { filesOf } from "../../firmwares/wrong-version.ts";
import { loadGrammar } from "../../src-core/reader/syntax/load-grammar.ts";
import { compileStyle, targets } from "./compile-style.ts";
import { type Cell, runCompiled } from "./run-compiled.ts";
import { wirings } from "./wirings.ts";

const grammar = await loadGrammar();
const cells: readonly Cell[] = [
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

// The compiled image is the reference: what avr-gcc makes of the same sources, on the instructions of avr8js.
describe.each(styles)("%s, compiled without a warning", (style) => {
  const files = filesOf(style);
  let image: Uint16Array = new Uint16Array(0);
  beforeAll(async () => {
    image = await compileStyle(files, targets[style]);
  });

  test.each(cells)("$mouse at $pc, $stroke: passes, and sends what its sources send", (cell) => {
    const compiled = runCompiled(image, targets[style], wirings[style], cell);
    expect(judgeRun(compiled).failures).toEqual([]);
    const service = createService({ host: hostOfFiles(files), grammar, startName: style });
    const result = service.simulate(service.projectsAt(".")[0]?.id ?? "", { ...cell, seed: 1 });
    if (result.kind === "cannot") throw new Error(result.message);
    const { serialBytes } = result.run.details;
    expect(serialBytes.map(({ byte }) => byte)).toEqual(compiled.pc.bytes.map(({ value }) => value));
    expect(serialBytes.length).toBeGreaterThan(5);
    serialBytes.forEach(({ from }, index) => {
      const apart = Math.abs(from - (compiled.pc.bytes[index]?.from ?? 0)) / 1e9;
      expect(apart, `byte ${index}`).toBeLessThan(turns[style]);
    });
  });
});
