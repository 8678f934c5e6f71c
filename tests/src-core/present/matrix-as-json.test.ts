import { expect, test } from "vitest";
import { matricesAsJson } from "../../../src-core/present/json/matrix-as-json.ts";
import { matrixLines, sampleMatrix } from "./sample-matrix.ts";

test("JSON has every cell with every run, and the sum", () => {
  const { version, matrices } = JSON.parse(
    matricesAsJson([{ project: "quay", result: sampleMatrix }], matrixLines),
  );
  expect({ version, count: matrices.length }).toEqual({ version: 1, count: 1 });
  const [matrix] = matrices;
  expect(matrix).toMatchObject({
    project: "quay",
    seed: 4,
    shard: { part: 1, parts: 2 },
    mice: ["plain", "late", "wheel"],
    pcs: ["old", "hurried"],
    strokes: ["nudge", "click"],
    summary: { passed: 1, failed: 3, notRun: 1 },
  });
  const cells: readonly { readonly mouse: string; readonly pc: string; readonly passed: boolean }[] =
    matrix.cells;
  expect(cells.map(({ mouse, pc, passed }) => `${mouse} ${pc} ${passed}`)).toEqual([
    "plain old true",
    "plain hurried false",
    "late old false",
    "late hurried false",
    "wheel old false",
  ]);
  expect(matrix.cells[1].runs[0]).toMatchObject({
    stroke: "nudge",
    passed: false,
    ended: 1_500_000_000_000,
    failures: [
      {
        rule: "ps2/request-hold-short",
        file: "quay/ps2.c",
        range: { start: { line: 3, column: 7 }, end: { line: 3, column: 14 } },
      },
      { rule: "report/counts-lost" },
    ],
    figures: { counts: [{ axis: "x", in: 5, out: 5 }], clicks: { in: 2, out: 2 } },
  });
  expect(matrix.cells[3].runs[0].stopped).toMatchObject({ message: "main returned", file: "quay/ps2.c" });
  expect(matrix.cells[4].runs[0]).toEqual({
    stroke: "nudge",
    passed: false,
    cannot: "the cell could not be run: no memory",
  });
});
