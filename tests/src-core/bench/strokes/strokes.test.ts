import { describe, expect, test } from "vitest";
import { Hand } from "../../../../src-core/bench/strokes/hand.ts";
import { type StrokeStep, step, strokeLength, strokeSum } from "../../../../src-core/bench/strokes/stroke.ts";
import { sampleStrokes } from "../../../../src-core/bench/strokes/strokes.ts";
import { ms, never } from "../../../../src-core/bench/time/time.ts";

function handOf(...steps: readonly Partial<StrokeStep>[]): Hand {
  const hand = new Hand();
  hand.perform({ name: "", title: "", steps: steps.map(step) }, 0);
  return hand;
}

const positions = (hand: Hand, ...times: readonly number[]) =>
  times.map((time) => {
    hand.moveTo(time * ms);
    return [hand.right, hand.down, hand.wheel];
  });

/** Distances and times worked out by hand. */
describe("the hand", () => {
  test("moves evenly, in whole counts, and arrives", () => {
    const hand = handOf({ over: 100 * ms, right: 10, down: -5 });
    expect(positions(hand, 0, 9, 10, 55, 99, 100, 500)).toEqual(
      [
        [0, 0],
        [0, 0],
        [1, 0],
        [5, -2],
        [9, -4],
        [10, -5],
        [10, -5],
      ].map(([right, down]) => [right, (down ?? 0) + 0, 0]),
    );
  });

  test("goes from step to step, and stands on where it was in the next stroke", () => {
    const hand = handOf(
      { over: 10 * ms, right: 4 },
      { over: 20 * ms },
      { over: 10 * ms, right: -8, wheel: 2 },
    );
    expect(positions(hand, 10, 29, 35, 41)).toEqual([
      [4, 0, 0],
      [4, 0, 0],
      [0, 0, 1],
      [-4, 0, 2],
    ]);
    hand.perform({ name: "", title: "", steps: [step({ right: 10 })] }, 50 * ms);
    expect(positions(hand, 50)).toEqual([[6, 0, 2]]);
  });

  test("leaves a stroke half done where another begins", () => {
    const hand = handOf({ over: 10 * ms, right: 10 });
    hand.perform({ name: "", title: "", steps: [step({ right: 1 })] }, 5 * ms);
    expect(positions(hand, 20)).toEqual([[6, 0, 0]]);
  });

  test("jumps in a step that takes no time", () => {
    expect(positions(handOf({ right: 3 }, { down: 2 }), 0)).toEqual([[3, 2, 0]]);
  });

  test("presses and lets go as a step begins", () => {
    const hand = handOf(
      { press: ["left"], over: 10 * ms },
      { release: ["left"], press: ["right"], over: 10 * ms },
    );
    const down = (time: number) => {
      hand.moveTo(time * ms);
      return [hand.isPressed("left"), hand.isPressed("right")];
    };
    expect([down(0), down(9), down(10), down(100)]).toEqual([
      [true, false],
      [true, false],
      [false, true],
      [false, true],
    ]);
  });

  test("tells when something may change next", () => {
    const hand = handOf({ over: 10 * ms }, { over: 10 * ms, right: 5 });
    expect([0, 5, 10, 15, 20].map((time) => hand.nextChange(time * ms))).toEqual([
      10 * ms,
      10 * ms,
      10 * ms,
      15 * ms,
      never,
    ]);
    expect(new Hand().nextChange(0)).toBe(never);
  });
});

describe("sample strokes", () => {
  test("have names of a kind, each but once, and titles that are sentences", () => {
    const names = sampleStrokes.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, title } of sampleStrokes) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(title).toMatch(/^[A-Z].*\.$/);
    }
  });

  test("let every button go, take some time, and none that moves sums up to nothing", () => {
    for (const stroke of sampleStrokes) {
      const hand = new Hand();
      hand.perform(stroke, 0);
      hand.moveTo(strokeLength(stroke));
      for (const button of ["left", "right", "middle", "button4", "button5"] as const) {
        expect(hand.isPressed(button), stroke.name).toBe(false);
      }
      const { right, down, wheel } = strokeSum(stroke);
      expect([hand.right, hand.down, hand.wheel], stroke.name).toEqual([right, down, wheel]);
      expect(strokeLength(stroke), stroke.name).toBeGreaterThan(0);
      const moves = stroke.steps.some((each) => each.right !== 0 || each.down !== 0 || each.wheel !== 0);
      expect(right !== 0 || down !== 0 || wheel !== 0, stroke.name).toBe(moves);
    }
  });

  test("only the flick is too fast for reports of a serial mouse", () => {
    // 127 counts in a report of the two-button layout (mouse(4): 8 bits of two's complement), 40 reports per second: three bytes of
    // ten bits at 1200 baud.
    const most = 127 * 40;
    const fastest = ({ steps }: { readonly steps: readonly StrokeStep[] }) =>
      Math.max(
        ...steps.map(({ over, right, down }) =>
          over === 0 ? 0 : (Math.max(Math.abs(right), Math.abs(down)) / over) * 1000 * ms,
        ),
      );
    const tooFast = sampleStrokes.filter((stroke) => fastest(stroke) > most).map(({ name }) => name);
    expect(tooFast).toEqual(["flick"]);
  });
});
