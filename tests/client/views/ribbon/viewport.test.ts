import { describe, expect, test } from "vitest";
import {
  atBegin,
  atEnd,
  closeUp,
  panned,
  revealing,
  serves,
  shortest,
  tileFor,
  whole,
  zoomed,
} from "../../../../client/views/ribbon/viewport.ts";

const ended = 8e12;
const second = 1e12;

describe("zoom", () => {
  test("what is under the pointer stays there", () => {
    const view = zoomed({ from: 0, to: 4 * second }, 0.5, second, ended);
    expect(view).toEqual({ from: 0.5 * second, to: 2.5 * second });
    // A quarter of the way from the left before and after.
    expect((second - view.from) / (view.to - view.from)).toBe(0.25);
  });

  test("it ends at the whole run and at the shortest view", () => {
    expect(zoomed({ from: second, to: 7 * second }, 4, 2 * second, ended)).toEqual(whole(ended));
    const close = zoomed({ from: second, to: second + shortest }, 0.5, second, ended);
    expect(close.to - close.from).toBe(shortest);
  });

  test("a run that is shorter than the shortest view is seen whole", () => {
    expect(zoomed(whole(1000), 0.5, 500, 1000)).toEqual(whole(1000));
  });
});

test("panning stops at the ends of the run and keeps the length", () => {
  const view = { from: second, to: 2 * second };
  expect(panned(view, 0.5, ended)).toEqual({ from: 1.5 * second, to: 2.5 * second });
  expect(panned(view, -3, ended)).toEqual({ from: 0, to: second });
  expect(panned(view, 30, ended)).toEqual({ from: 7 * second, to: ended });
  expect(atBegin(view)).toEqual({ from: 0, to: second });
  expect(atEnd(view, ended)).toEqual({ from: 7 * second, to: ended });
});

test("what is in sight does not move the view, what is not comes into its middle", () => {
  const view = { from: second, to: 2 * second };
  expect(revealing(view, { from: 1.2 * second, to: 1.3 * second }, ended)).toBe(view);
  expect(revealing(view, { from: 4.9 * second, to: 5.1 * second }, ended)).toEqual({
    from: 4.5 * second,
    to: 5.5 * second,
  });
  expect(closeUp({ from: 4 * second, to: 5 * second }, 0.5, ended)).toEqual({
    from: 3.5 * second,
    to: 5.5 * second,
  });
});

describe("what is laid out", () => {
  const view = { from: 3 * second, to: 4 * second };

  test("as much again on both sides, a column for each pixel", () => {
    const tile = tileFor(view, 1000, ended);
    expect(tile).toEqual({ from: 2 * second, to: 5 * second, columns: 3000 });
    expect(serves(tile, view, 1000, ended)).toBe(true);
    expect(tileFor(whole(ended), 1000, ended)).toEqual({ from: 0, to: ended, columns: 1000 });
  });

  test("it serves until one comes near its end or needs it finer", () => {
    const tile = tileFor(view, 1000, ended);
    expect(serves(tile, panned(view, 0.5, ended), 1000, ended)).toBe(true);
    expect(serves(tile, panned(view, 0.9, ended), 1000, ended)).toBe(false);
    expect(serves(tile, zoomed(view, 0.5, 3.5 * second, ended), 1000, ended)).toBe(false);
    expect(serves(tile, zoomed(view, 2, 3.5 * second, ended), 1000, ended)).toBe(false);
    expect(serves(undefined, view, 1000, ended)).toBe(false);
  });

  test("it never holds much more than is in sight, however long the run is", () => {
    for (
      let { from, to } = whole(ended);
      to - from > shortest;
      { from, to } = zoomed({ from, to }, 0.5, second, ended)
    )
      expect(tileFor({ from, to }, 1200, ended).columns).toBeLessThanOrEqual(3601);
  });
});
