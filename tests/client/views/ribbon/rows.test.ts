import { describe, expect, test } from "vitest";
import {
  axisHeight,
  heightOf,
  itemAt,
  itemsOf,
  placeLanes,
  placeRows,
  rowAt,
  rowHeight,
  stepFrom,
} from "../../../../client/views/ribbon/rows.ts";
import type { Lane, Mark, Row } from "../../../../server/language-server/client-messages/runs.ts";

const us = 1e6;
const ms = 1e9;
const place = { file: "ps2.c", line: 26, column: 5 };

const clock: Row = {
  kind: "wire",
  label: "clock",
  stretches: [
    { from: 0, to: 10 * ms, level: 1, changes: 0, place: undefined },
    { from: 10 * ms, to: 10 * ms + 60 * us, level: 0, changes: 1, place },
    { from: 10 * ms + 60 * us, to: 11 * ms, level: "busy", changes: 12, place: undefined },
    { from: 11 * ms, to: 12 * ms, level: 1, changes: 1, place: undefined },
  ],
};
const mark: Mark = {
  kind: "from-host",
  from: 10 * ms,
  to: 11 * ms,
  isFault: false,
  texts: ["F4"],
  detail: "0xF4 enable reporting",
  count: 1,
  tone: 0,
  place: undefined,
};
const sent: Row = { kind: "marks", label: "to the mouse", marks: [mark] };
const lanes: readonly Lane[] = [
  { id: "mouse", title: "mouse", rows: [clock, sent] },
  { id: "pc", title: "PC", rows: [] },
];

describe("rows", () => {
  const placed = placeLanes({ lanes });
  const rows = placeRows(placed);

  test("they follow each other without overlapping, below the axis and within the height", () => {
    const [first, second] = rows;
    expect(first?.top).toBeGreaterThanOrEqual(axisHeight);
    expect((second?.top ?? 0) - (first?.top ?? 0)).toBe(rowHeight);
    expect((second?.top ?? 0) + rowHeight).toBeLessThanOrEqual(heightOf(placed));
  });

  test("a height is a row, or between rows", () => {
    const top = rows[1]?.top ?? 0;
    expect(rowAt(rows, top)).toBe(1);
    expect(rowAt(rows, top + rowHeight - 1)).toBe(1);
    expect(rowAt(rows, top + rowHeight)).toBeUndefined();
    expect(rowAt(rows, 0)).toBeUndefined();
  });

  test("edges say what they do, when and by which line; a level that was there from the begin is no edge", () => {
    const [first] = rows;
    const items = first === undefined ? [] : itemsOf(first, 0);
    expect(items.map(({ words }) => words)).toEqual([
      "clock falls, 10 ms, ps2.c:26",
      "clock changes 12 times within 940 us, 10.06 ms",
      "clock rises, 11 ms",
    ]);
    expect(items[0]).toMatchObject({ from: 10 * ms, to: 10 * ms, isEdge: true, place });
  });

  test("a click takes the nearest within reach; keys go from one to the next", () => {
    const [first, second] = rows;
    const edges = first === undefined ? [] : itemsOf(first, 0);
    expect(itemAt(edges, 10 * ms - 3 * us, 5 * us)?.from).toBe(10 * ms);
    expect(itemAt(edges, 9 * ms, 5 * us)).toBeUndefined();
    // Inside what lasts there, though an edge is near.
    expect(itemAt(edges, 10 * ms + 62 * us, 5 * us)?.words).toContain("12 times");
    const frames = second === undefined ? [] : itemsOf(second, 1);
    expect(itemAt(frames, 10.5 * ms, 0)?.words).toBe("to the mouse: 0xF4 enable reporting");
    expect(stepFrom(edges, 10 * ms, 1)?.from).toBe(10 * ms + 60 * us);
    expect(stepFrom(edges, 11 * ms, -1)?.from).toBe(10 * ms + 60 * us);
    expect(stepFrom(edges, 11 * ms, 1)).toBeUndefined();
  });
});
