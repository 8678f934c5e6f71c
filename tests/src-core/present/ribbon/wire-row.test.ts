import { expect, test } from "vitest";
import { wireRow } from "../../../../src-core/present/ribbon/wire-row.ts";
import type { RecordedEdge } from "../../../../src-core/run-details.ts";

const edges = (
  ...times: readonly (readonly [time: number, level: 0 | 1, place?: number])[]
): RecordedEdge[] =>
  times.map(([time, level, place]) => ({ time, wire: "clock", level, by: "mouse", place }));

function row(of: readonly RecordedEdge[], from: number, to: number, finest: number) {
  const drawn = wireRow("clock", of, { from, to }, finest, (place) =>
    place === undefined ? undefined : { file: "ferry.c", line: place, column: 1 },
  );
  return drawn.kind === "wire"
    ? drawn.stretches.map(({ from: a, to: b, level, changes }) => [a, b, level, changes])
    : [];
}

test("a wire without an edge rests high, and one whose first edge rises was low", () => {
  expect(row([], 0, 100, 1)).toEqual([[0, 100, 1, 0]]);
  expect(row(edges([40, 1]), 0, 100, 1)).toEqual([
    [0, 40, 0, 0],
    [40, 100, 1, 1],
  ]);
});

test("a window begins at the level that the last edge before it made", () => {
  expect(row(edges([10, 0], [50, 1]), 20, 100, 1)).toEqual([
    [20, 50, 0, 0],
    [50, 100, 1, 1],
  ]);
});

test("what cannot be told apart is one busy stretch that counts its changes", () => {
  expect(row(edges([30, 0], [31, 1], [32, 0], [33, 1]), 0, 100, 10)).toEqual([
    [0, 30, 1, 0],
    [30, 33, "busy", 3],
    [33, 100, 1, 1],
  ]);
});

test("stretches know the code that made the change at their start", () => {
  const drawn = wireRow("clock", edges([30, 0, 7]), { from: 0, to: 100 }, 1, (place) =>
    place === undefined ? undefined : { file: "ferry.c", line: place, column: 1 },
  );
  expect(drawn.kind === "wire" && drawn.stretches.map(({ place }) => place?.line)).toEqual([undefined, 7]);
});
