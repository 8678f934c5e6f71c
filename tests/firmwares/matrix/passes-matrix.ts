import { describe, expect, test } from "vitest";
import type { RunInBrief } from "../../../src-core/matrix-result.ts";
import { hasPassed } from "../../../src-core/simulation-result.ts";
import type { Style } from "../planted/planted-fault.ts";
import { Workbench } from "../workbench.ts";
import { filesOf, placeOf } from "../wrong-version.ts";

/** Strokes of a cell: all of them, or one, which goes on from cell to cell so that each is done with every mouse and PC alike. */
type StrokesOfCell = "every stroke" | "strokes in turn";

/**
 * Tests that a style passes with every mouse, at every PC, with the usual strokes: what `edgewise matrix` runs. A firmware that
 * waits busily takes minutes for all of it, so it does its strokes in turn, unless EDGEWISE_EVERY_STROKE is set.
 */
export function passesMatrix(style: Style, wanted: StrokesOfCell): void {
  const inTurn = wanted === "strokes in turn" && process.env.EDGEWISE_EVERY_STROKE === undefined;
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
      const turn = (mice.indexOf(mouse) + pcs.indexOf(pc)) % strokes.length;
      const done = strokes.filter((_, index) => !inTurn || index === turn).map(({ name }) => name);
      const runs = bench.runAll(files, { mouse: mouse.name, pc: pc.name, strokes: done, seed: 1 });
      expect(runs.length).toBe(inTurn ? 1 : strokes.length);
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
