import type { ButtonName } from "../../model/layouts/layout.ts";
import type { Time } from "../time/time.ts";

/** A sample movement: what a hand does with the mouse. */
export interface Stroke {
  /** As `--stroke` and edgewise.json name it. */
  readonly name: string;
  /** One sentence. */
  readonly title: string;
  readonly steps: readonly StrokeStep[];
}

/**
 * The buttons change at once, then the mouse moves evenly. Movements are in counts of a mouse at its default resolution
 * (`mouseDefaults` of the model), so that setting another one changes what the mouse reports.
 */
export interface StrokeStep {
  /** How long the movement takes; 0 for at once. */
  readonly over: Time;
  /** Counts to the right; negative is left. */
  readonly right: number;
  /** Counts towards the user, which is down on the screen; negative is up. */
  readonly down: number;
  /** Steps of the wheel towards the user. */
  readonly wheel: number;
  readonly press: readonly ButtonName[];
  readonly release: readonly ButtonName[];
}

const still: StrokeStep = { over: 0, right: 0, down: 0, wheel: 0, press: [], release: [] };

/** A step in which everything that is not said stays as it is. */
export function step(said: Partial<StrokeStep>): StrokeStep {
  return { ...still, ...said };
}

/** How long the whole stroke takes. */
export function strokeLength(stroke: Stroke): Time {
  return stroke.steps.reduce((sum, { over }) => sum + over, 0);
}

/** Where a stroke leads in all, in counts at the default resolution. */
export function strokeSum(stroke: Stroke): { right: number; down: number; wheel: number } {
  const sum = { right: 0, down: 0, wheel: 0 };
  for (const { right, down, wheel } of stroke.steps) {
    sum.right += right;
    sum.down += down;
    sum.wheel += wheel;
  }
  return sum;
}
