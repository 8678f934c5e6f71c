import { describe, expect, test } from "vitest";
import type { RunInBrief } from "../../../src-core/matrix-result.ts";
import { hasPassed } from "../../../src-core/simulation-result.ts";
import type { Style } from "../planted/planted-fault.ts";
import { Workbench } from "../workbench.ts";
import { filesOf, placeOf } from "../wrong-version.ts";

/** Tests that a style passes with every mouse, at every PC, with the usual strokes: what `edgewise matrix` runs. */
export function passesWholeMatrix(style: Style): void {
  const files = filesOf(style);
  const bench = new Workbench(style);
  const { mice, pcs, strokes } = bench.plan(files);

  test("everything is in the matrix", () => {
    expect(mice.length).toBeGreaterThanOrEqual(18);
    expect(pcs.length).toBeGreaterThanOrEqual(6);
    expect(strokes.length).toBeGreaterThanOrEqual(5);
  });

  describe.each(mice)(`${style} with the mouse $name`, (mouse) => {
    test.each(pcs)("at the PC $name passes", (pc) => {
      const choice = { mouse: mouse.name, pc: pc.name, strokes: strokes.map(({ name }) => name), seed: 1 };
      const runs = bench.runAll(files, choice);
      expect(runs.length).toBe(strokes.length);
      expect(runs.filter((run) => !hasPassed(run)).map(said)).toEqual([]);
    });
  });

  function said({ stroke, strokeBegan, stopped, verdict }: RunInBrief): string {
    const faults = verdict.failures.map(({ rule, span, message }) => {
      return `${rule} at ${placeOf(span, files)}: ${message}`;
    });
    const began = strokeBegan ? "" : " never began";
    return [`${stroke.name}${began}`, stopped?.message ?? "", ...faults].join("; ");
  }
}
