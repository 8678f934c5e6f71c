import { beforeAll, describe, expect, test } from "vitest";
import { judgeRun } from "../../../src-core/bench/verdicts/judge-run.ts";
import { styles } from "../../firmwares/planted/planted-fault.ts";
import { filesOf } from "../../firmwares/wrong-version.ts";
import { compileStyle, targets } from "./compile-style.ts";
import { type Cell, runCompiled } from "./run-compiled.ts";
import { wirings } from "./wirings.ts";

const cells: readonly Cell[] = [
  { mouse: "plain", pc: "rts-toggle", stroke: "nudge" },
  { mouse: "plain", pc: "rts-toggle", stroke: "flick" },
];

// The compiled image is the reference: what avr-gcc makes of the same sources, on the instructions of avr8js.
describe.each(styles)("%s, compiled without a warning", (style) => {
  const files = filesOf(style);
  let image: Uint16Array = new Uint16Array(0);
  beforeAll(async () => {
    image = await compileStyle(files, targets[style]);
  });

  test.each(cells)("$mouse at $pc, $stroke: passes", (cell) => {
    const compiled = runCompiled(image, targets[style], wirings[style], cell);
    expect(compiled.pc.bytes.length).toBeGreaterThan(5);
    expect(judgeRun(compiled).failures).toEqual([]);
  });
});
