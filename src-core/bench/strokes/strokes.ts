import { ms } from "../time/time.ts";
import { type Stroke, type StrokeStep, step } from "./stroke.ts";

/** Times and distances are our own: what a hand does, at speeds that a serial mouse can still report. */
const nudgeRest = 100 * ms;
const slow = 400 * ms;
const fast = 250 * ms;
const pressed = 80 * ms;

/** There and part of the way back, so that no sum of counts comes out at nothing. */
function sweep(over: number, right: number, down: number): readonly StrokeStep[] {
  const back = { right: -Math.trunc(right / 4), down: -Math.trunc(down / 4) };
  return [step({ over, right, down }), step({ over: over / 4, ...back })];
}

/** Corners of a circle's chords, each from the one before, so that rounding does not add up. */
function circle(radius: number, chords: number, over: number): readonly StrokeStep[] {
  const corner = (index: number): readonly [number, number] => {
    const angle = (2 * Math.PI * index) / chords;
    return [Math.round(radius * Math.sin(angle)), Math.round(radius * (1 - Math.cos(angle)))];
  };
  return Array.from({ length: chords }, (_, index) => {
    const [fromRight, fromDown] = corner(index);
    const [right, down] = corner(index + 1);
    return step({ over: over / chords, right: right - fromRight, down: down - fromDown });
  });
}

/** Movements that the bench knows by name. */
export const sampleStrokes: readonly Stroke[] = [
  { name: "rest", title: "Nothing moves for a while.", steps: [step({ over: 300 * ms })] },
  {
    name: "nudge",
    title: "Single counts to each side, with rests between.",
    steps: [
      step({ right: 1 }),
      step({ over: nudgeRest }),
      step({ down: 1 }),
      step({ over: nudgeRest }),
      step({ right: -1 }),
      step({ over: nudgeRest }),
      step({ down: -1 }),
      step({ over: nudgeRest }),
      step({ right: 1, down: 1 }),
      step({ over: nudgeRest }),
    ],
  },
  {
    name: "slow-sideways",
    title: "Slowly to the right and a little back.",
    steps: sweep(slow, 40, 0),
  },
  {
    name: "slow-up-and-down",
    title: "Slowly down and a little up again.",
    steps: sweep(slow, 0, 40),
  },
  {
    name: "slow-diagonals",
    title: "Slowly down to the right, then up to the right.",
    steps: [...sweep(slow, 40, 24), ...sweep(slow, 24, -40)],
  },
  {
    name: "fast-sideways",
    title: "Fast to the right and part of the way back.",
    steps: sweep(fast, 800, 0),
  },
  {
    name: "fast-up-and-down",
    title: "Fast down and part of the way up again.",
    steps: sweep(fast, 0, 800),
  },
  {
    name: "fast-diagonals",
    title: "Fast down to the right, then up to the left.",
    steps: [...sweep(fast, 700, 500), ...sweep(fast, -400, -600)],
  },
  {
    name: "circle",
    title: "A whole circle and the first eighth of another.",
    steps: (() => {
      const whole = circle(100, 32, 500 * ms);
      return [...whole, ...whole.slice(0, 4)];
    })(),
  },
  {
    name: "flick",
    title: "So fast that a report of the default rate cannot hold its counts.",
    steps: [
      step({ over: 40 * ms, right: 2000, down: -1600 }),
      step({ over: 100 * ms }),
      step({ over: 100 * ms, right: 20 }),
    ],
  },
  {
    name: "click",
    title: "Each of three buttons once, with the mouse at rest.",
    steps: [
      step({ press: ["left"], over: pressed }),
      step({ release: ["left"], over: pressed }),
      step({ press: ["right"], over: pressed }),
      step({ release: ["right"], over: pressed }),
      step({ press: ["middle"], over: pressed }),
      step({ release: ["middle"], over: pressed }),
    ],
  },
  {
    name: "double-click",
    title: "The left button twice, quickly.",
    steps: [
      step({ press: ["left"], over: 50 * ms }),
      step({ release: ["left"], over: 60 * ms }),
      step({ press: ["left"], over: 50 * ms }),
      step({ release: ["left"], over: 60 * ms }),
    ],
  },
  {
    name: "drag",
    title: "The left button held down over a movement, and let go while the mouse still moves.",
    steps: [
      step({ press: ["left"], over: 40 * ms }),
      step({ over: 300 * ms, right: 200, down: 120 }),
      step({ release: ["left"], over: 100 * ms, right: 40, down: 10 }),
    ],
  },
  {
    name: "wheel",
    title: "The wheel some steps towards the user, then away, then a spin.",
    steps: [
      step({ over: 300 * ms, wheel: 5 }),
      step({ over: 200 * ms, wheel: -3 }),
      step({ over: 100 * ms, wheel: 20 }),
    ],
  },
  {
    name: "all-at-once",
    title: "Movement on both axes, buttons and wheel at the same time.",
    steps: [
      step({ press: ["left"], over: 100 * ms, right: 150, down: -100, wheel: 2 }),
      step({ press: ["right"], over: 100 * ms, right: -60, down: 130, wheel: -1 }),
      step({ press: ["middle", "button4"], release: ["left"], over: 100 * ms, right: 90, down: 40 }),
      step({ press: ["button5"], release: ["right", "button4"], over: 100 * ms, right: -20, wheel: 3 }),
      step({ release: ["middle", "button5"], over: 50 * ms, down: -70 }),
    ],
  },
];
