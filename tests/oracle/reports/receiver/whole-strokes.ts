import { describe, expect, test } from "vitest";
import { buttonChanges } from "../../../../src-core/bench/pcs/reports/report-receiver.ts";
import type { Run } from "../../../../src-core/bench/run-record.ts";
import { benchRun } from "../../../src-core/bench/verdicts/bench.ts";
import { gpmButtons, type PointerEvent } from "./pointer-events.ts";
import { Receiver } from "./receiver.ts";

/** Something that gpm tells of for certain, so that all before has been told when it comes: the right button. */
const end = [0x50, 0, 0] as const;

/** Everything that gpm tells of these bytes of a two-button mouse, the end left out. */
async function toldBy(receiver: Receiver, bytes: readonly number[]): Promise<readonly PointerEvent[]> {
  receiver.send([...bytes, ...end]);
  const events: PointerEvent[] = [];
  for (;;) {
    const event = await receiver.next();
    if (event.buttons === gpmButtons.right && event.dx === 0 && event.dy === 0) return events;
    events.push(event);
  }
}

function sumsOf(run: Run) {
  const sum = (name: "x" | "y"): number =>
    run.pc.reports.reduce((all, { values }) => all + (values[name] ?? 0), 0);
  return { x: sum("x"), y: sum("y") };
}

/**
 * gpm reads what came in while the bench's PC took reports: a whole stroke of a mouse by way of an adapter. It tells one step
 * of y for two counts and keeps the odd one.
 */
export function wholeStrokes(started: (receiver: Receiver) => void): void {
  describe("gpm reads a whole stroke as the bench's PC does", () => {
    test.each(["circle", "fast-diagonals", "flick"])("%s: the sum of movements", async (stroke) => {
      const run = benchRun({ strokes: [stroke] });
      const receiver = await Receiver.start("bare", undefined);
      started(receiver);
      const told = await toldBy(receiver, reportBytes(run));
      const { x, y } = sumsOf(run);
      expect(told.reduce((sum, { dx }) => sum + dx, 0)).toBe(x);
      const steps = told.reduce((sum, { dy }) => sum + dy, 0);
      expect(Math.abs(2 * steps - y)).toBeLessThanOrEqual(1);
      expect(Math.abs(x) + Math.abs(y)).toBeGreaterThan(50);
    });

    test("double-click: every press and release", async () => {
      const run = benchRun({ strokes: ["double-click"] });
      const receiver = await Receiver.start("bare", undefined);
      started(receiver);
      const told = await toldBy(receiver, reportBytes(run));
      expect(buttonChanges(run.pc.reports).map(({ button, down }) => [button, down])).toEqual([
        ["left", true],
        ["left", false],
        ["left", true],
        ["left", false],
      ]);
      expect(told.filter(({ buttons }) => buttons === gpmButtons.left).length).toBe(4);
    });
  });
}

function reportBytes({ pc }: Run): readonly number[] {
  const from = pc.sessions[0]?.from ?? 0;
  return pc.bytes.filter(({ time }) => time > from).map(({ value }) => value);
}
