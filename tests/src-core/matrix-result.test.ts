import { describe, expect, test } from "vitest";
import { cellsOf, type MatrixPlan } from "../../src-core/matrix-result.ts";

const named = (...names: string[]) => names.map((name) => ({ name, title: "" }));
const plan: MatrixPlan = { mice: named("a", "b", "c"), pcs: named("1", "2"), strokes: named("s", "t") };
const cells = (part: number, parts: number) =>
  cellsOf(plan, { part, parts }).map(({ mouse, pc }) => mouse + pc);

describe("the cells of a matrix", () => {
  test("are every mouse at every PC, mouse by mouse, once for all strokes", () => {
    const all = cellsOf(plan, undefined).map(({ mouse, pc }) => mouse + pc);
    expect(all).toEqual(["a1", "a2", "b1", "b2", "c1", "c2"]);
  });

  test("are dealt out to the shards in turn", () => {
    expect(cells(1, 4)).toEqual(["a1", "c1"]);
    expect(cells(2, 4)).toEqual(["a2", "c2"]);
    expect(cells(3, 4)).toEqual(["b1"]);
    expect(cells(4, 4)).toEqual(["b2"]);
  });

  test("may be fewer than there are shards", () => {
    expect(cells(6, 9)).toEqual(["c2"]);
    expect(cells(7, 9)).toEqual([]);
  });
});
