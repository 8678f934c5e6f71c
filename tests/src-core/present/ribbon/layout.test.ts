import { describe, expect, test } from "vitest";
import { condensed } from "../../../../src-core/present/ribbon/condense.ts";
import { markOf } from "../../../../src-core/present/ribbon/mark-of.ts";
import { reportInBrief, reportInWords } from "../../../../src-core/present/ribbon/report-words.ts";
import { ticksOf } from "../../../../src-core/present/ribbon/time-axis.ts";
import { windowOf } from "../../../../src-core/present/ribbon/time-window.ts";

const MS = 1e9;

describe("marks", () => {
  const mark = (from: number, to: number, name: string, isFault = false) =>
    markOf("byte", from, to, { texts: [name], detail: name, isFault });
  const whole = { from: 0, to: 1000 };

  test("that are wide enough stay as they are", () => {
    const marks = [mark(0, 100, "40"), mark(100, 200, "3F")];
    expect(condensed(marks, whole, 10)).toEqual(marks);
  });

  test("that cannot be told apart are one, which counts them and keeps a fault among them", () => {
    const [one, more] = condensed([mark(0, 5, "40"), mark(8, 13, "3F", true), mark(16, 20, "00")], whole, 10);
    expect(one).toMatchObject({ from: 0, to: 20, count: 3, isFault: true, texts: ["3 bytes", "3"] });
    expect(one?.detail).toBe("3: 40, 3F, 00");
    expect(more).toBeUndefined();
  });

  test("with room between them do not merge, however short", () => {
    expect(condensed([mark(0, 5, "40"), mark(50, 55, "3F")], whole, 10)).toHaveLength(2);
  });

  test("outside the window are left out", () => {
    expect(condensed([mark(0, 5, "40"), mark(500, 600, "3F")], { from: 100, to: 400 }, 1)).toEqual([]);
  });
});

describe("the time axis", () => {
  test.each([
    [
      0,
      2000,
      10,
      ["0 s", "0.2 s", "0.4 s", "0.6 s", "0.8 s", "1 s", "1.2 s", "1.4 s", "1.6 s", "1.8 s", "2 s"],
    ],
    [12, 47, 4, ["20 ms", "30 ms", "40 ms"]],
    [11.2, 11.9, 4, ["11.2 ms", "11.4 ms", "11.6 ms", "11.8 ms"]],
  ])("from %d ms to %d ms", (from, to, most, labels) => {
    expect(ticksOf({ from: from * MS, to: to * MS }, most).map(({ label }) => label)).toEqual(labels);
  });
});

describe("a window", () => {
  const ended = 1840 * MS;

  test.each([
    [
      { from: 10, to: 20.5 },
      { from: 10 * MS, to: 20.5 * MS },
    ],
    [
      { from: undefined, to: 5 },
      { from: 0, to: 5 * MS },
    ],
    [
      { from: 1800, to: undefined },
      { from: 1800 * MS, to: ended },
    ],
    [
      { from: 1800, to: 9000 },
      { from: 1800 * MS, to: ended },
    ],
  ])("%o", (asked, window) => {
    expect(windowOf(asked, ended)).toEqual(window);
  });

  test.each([
    [{ from: 20, to: 20 }, "nothing lies between 20 ms and 20 ms: the run ends at 1840 ms"],
    [{ from: 2000, to: undefined }, "nothing lies between 2000 ms and 1840 ms: the run ends at 1840 ms"],
  ])("%o holds nothing", (asked, nothing) => {
    expect(windowOf(asked, ended)).toEqual({ nothing });
  });
});

describe("a report", () => {
  test.each([
    [{ x: 5, y: -3, left: true, right: false }, "x +5 y \u22123 L", "+5 \u22123 L"],
    [{ x: 0, y: 2, wheel: -1 }, "y +2 wheel \u22121", "0 +2 w\u22121"],
    [{ x: 0, y: 0, right: true, button5: true }, "R 5", "R 5"],
    [{ x: 0, y: 0 }, "at rest", "0"],
  ])("%o", (values, words, brief) => {
    expect(reportInWords(values)).toBe(words);
    expect(reportInBrief(values)).toBe(brief);
  });
});
