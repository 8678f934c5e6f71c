import type { Time } from "../../bench/time/time.ts";
import type { TimeWindow } from "../ribbon/ribbon.ts";

/** Moments of a window as pixels from `left` to `right`; those outside are at its ends. */
export interface Scale {
  readonly left: number;
  readonly right: number;
  x(time: Time): number;
}

export function scaleOf({ from, to }: TimeWindow, left: number, right: number): Scale {
  const perPixel = (to - from) / (right - left);
  return {
    left,
    right,
    x: (time) => Math.min(right, Math.max(left, left + (time - from) / perPixel)),
  };
}
