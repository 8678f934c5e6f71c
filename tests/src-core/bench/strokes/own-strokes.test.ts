import { describe, expect, test } from "vitest";
import { strokeOfTry } from "../../../../src-core/bench/strokes/from-note.ts";
import { ownStrokes, strokesFor, usualStrokes } from "../../../../src-core/bench/strokes/from-settings.ts";
import { strokeLength, strokeSum } from "../../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { ms } from "../../../../src-core/bench/time/time.ts";
import type { TryNote } from "../../../../src-core/notes/note.ts";
import { readSettings } from "../../../../src-core/notes/settings/read-settings.ts";
import { readFacts } from "../../notes/read-units.ts";
import { SMALL_VOCABULARY } from "../../notes/small-vocabulary.ts";

const simulate = (text: string) =>
  readSettings("edgewise.json", `{"simulate": ${text}}`, SMALL_VOCABULARY).settings.simulate;

describe("strokes of edgewise.json", () => {
  const own = `{ "ownStrokes": { "to-the-quay": [
    { "press": ["left", "button4"], "right": 120, "down": -40, "ms": 300 },
    { "release": ["left"], "wheel": 2 } ] } }`;

  test("are made of their steps, in milliseconds", () => {
    expect(ownStrokes(simulate(own))).toMatchObject([
      {
        name: "to-the-quay",
        steps: [
          { over: 300 * ms, right: 120, down: -40, wheel: 0, press: ["left", "button4"], release: [] },
          { over: 0, right: 0, down: 0, wheel: 2, press: [], release: ["left"] },
        ],
      },
    ]);
  });

  test("stand beside those of the bench, and hide one of the same name", () => {
    const names = strokesFor(simulate('{ "ownStrokes": { "circle": [], "quay": [] } }')).map(
      ({ name }) => name,
    );
    expect(names.slice(0, 2)).toEqual(["circle", "quay"]);
    expect(names.filter((name) => name === "circle")).toHaveLength(1);
    expect(names).toHaveLength(sampleStrokes.length + 1);
  });

  test("are run beside the most telling ones where nobody names any", () => {
    const names = (text: string) => usualStrokes(simulate(text)).map(({ name }) => name);
    const telling = ["nudge", "fast-diagonals", "flick", "click", "all-at-once"];
    expect(names("{}")).toEqual(telling);
    expect(names('{ "ownStrokes": { "quay": [], "wheel": [] } }')).toEqual(["quay", "wheel", ...telling]);
  });
});

describe("the stroke of a `@wire try` note", () => {
  const stroke = (words: string) => {
    const { notes } = readFacts({ "a.c": `// @wire try ${words}\nvoid send(void) {}\n` });
    const note = notes.find((each): each is TryNote => each.kind === "try");
    if (note === undefined) throw new Error(`no note of "${words}"`);
    return strokeOfTry(note);
  };

  test("moves as the note says, with the buttons held", () => {
    const made = stroke("right=12 up=5 wheel=1 press=left,right");
    expect(strokeSum(made)).toEqual({ right: 12, down: -5, wheel: 1 });
    expect(made.steps[0]?.press).toEqual(["left", "right"]);
    expect(made.steps.at(-1)?.release).toEqual(["left", "right"]);
  });

  test("takes its time, so that one report of 100 per second can hold what moves in 10 ms", () => {
    for (const words of ["right=1000", "left=30000", "down=1", "press=left", "wheel=100"]) {
      const { steps } = stroke(words);
      for (const { over, right, down, wheel } of steps) {
        const reports = over / (10 * ms);
        expect(reports).toBeGreaterThanOrEqual(2);
        expect(Math.max(Math.abs(right), Math.abs(down)) / reports).toBeLessThanOrEqual(255);
        expect(Math.abs(wheel) / reports).toBeLessThanOrEqual(7);
      }
      expect(strokeLength(stroke(words))).toBeLessThan(60_000 * ms);
    }
  });
});
