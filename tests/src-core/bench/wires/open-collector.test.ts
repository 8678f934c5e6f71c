import { describe, expect, test } from "vitest";
import { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import type { Party } from "../../../../src-core/bench/wires/edge.ts";
import { type Drive, OpenCollectorWire } from "../../../../src-core/bench/wires/open-collector.ts";

/** A line that rises in 10 ps, pulled up by both sides; each drive at its moment. What a wired-AND does: low wins. */
function line(...drives: readonly (readonly [time: number, party: Party, drive: Drive])[]) {
  const queue = new EventQueue();
  const wire = new OpenCollectorWire("clock", queue, 10);
  const edges: (readonly [number, number, Party])[] = [];
  wire.onEdge(({ time, level, cause }) => edges.push([time, level, cause.party]));
  for (const party of ["mouse", "firmware"] as const) wire.pullUp(party, true, { party, at: undefined });
  for (const [time, party, drive] of drives) {
    queue.at(time, () => wire.drive(party, drive, { party, at: undefined }));
  }
  return { queue, wire, edges };
}

describe("an open-collector line", () => {
  test("is low while anybody pulls, and rises after the last lets go, by whom it is told", () => {
    const { queue, wire, edges } = line(
      [100, "mouse", "low"],
      [150, "firmware", "low"],
      [200, "mouse", "released"],
      [300, "firmware", "released"],
    );
    queue.advanceTo(1000);
    expect(edges).toEqual([
      [100, 0, "mouse"],
      [310, 1, "firmware"],
    ]);
    expect([wire.pullLength("mouse"), wire.pullLength("firmware")]).toEqual([100, 150]);
  });

  test("does not rise where it is pulled again before it has", () => {
    const { queue, edges } = line(
      [100, "mouse", "low"],
      [200, "mouse", "released"],
      [205, "firmware", "low"],
      [300, "firmware", "released"],
    );
    queue.advanceTo(1000);
    expect(edges).toEqual([
      [100, 0, "mouse"],
      [310, 1, "firmware"],
    ]);
  });

  test("tells who lets it go and who pulls it up", () => {
    const { queue, wire } = line(
      [100, "mouse", "low"],
      [150, "firmware", "low"],
      [200, "firmware", "released"],
    );
    queue.advanceTo(120);
    expect([wire.isFreeBut("mouse"), wire.isFreeBut("firmware")]).toEqual([true, false]);
    queue.advanceTo(160);
    expect([wire.isFreeBut("mouse"), wire.isFreeBut("firmware")]).toEqual([false, false]);
    queue.advanceTo(210);
    expect([wire.isFreeBut("mouse"), wire.isFreeBut("firmware")]).toEqual([true, false]);
    expect(wire.isPulledUpBut("mouse")).toBe(true);
    wire.pullUp("firmware", false, { party: "firmware", at: undefined });
    expect([wire.isPulledUpBut("mouse"), wire.isPulledUpBut("firmware")]).toEqual([false, true]);
  });

  test("stays low without a pull-up", () => {
    const { queue, wire, edges } = line([100, "mouse", "low"], [200, "mouse", "released"]);
    for (const party of ["mouse", "firmware"] as const) wire.pullUp(party, false, { party, at: undefined });
    queue.advanceTo(1000);
    expect([wire.level, edges]).toEqual([0, [[100, 0, "mouse"]]]);
  });

  test("notes who drives it high, alone at once and against somebody without effect", () => {
    const { queue, wire, edges } = line(
      [100, "firmware", "low"],
      [200, "firmware", "high"],
      [300, "mouse", "low"],
      [400, "firmware", "released"],
      [450, "firmware", "high"],
    );
    queue.advanceTo(1000);
    expect(edges).toEqual([
      [100, 0, "firmware"],
      [200, 1, "firmware"],
      [300, 0, "mouse"],
    ]);
    expect(wire.conflicts.map(({ time, kind }) => [time, kind])).toEqual([
      [200, "driven-high"],
      [450, "fight"],
    ]);
    expect(wire.pullLength("firmware")).toBe(100);
  });
});
