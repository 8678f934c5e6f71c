import { ms, type Time, us } from "../../bench/time/time.ts";
import { plain } from "../../figures.ts";
import type { Tick, TimeWindow } from "./ribbon.ts";

/** Moments at whole steps of 1, 2 or 5, at most so many. */
export function ticksOf({ from, to }: TimeWindow, most: number): readonly Tick[] {
  const step = stepFor((to - from) / most);
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const time = (first + index) * step;
    return { time, label: timeLabel(time, step) };
  });
}

function stepFor(least: Time): Time {
  let step = us;
  for (;;) {
    for (const factor of [1, 2, 5]) if (step * factor >= least) return step * factor;
    step *= 10;
  }
}

/** In seconds where the steps are long. */
function timeLabel(time: Time, step: Time): string {
  return step >= 100 * ms ? `${plain(time / (1000 * ms), 1)} s` : `${plain(time / ms, 3)} ms`;
}

/** "812.4 ms" */
export function moment(time: Time): string {
  return `${plain(time / ms, 2)} ms`;
}

/** "40.3 ms", "104 us" */
export function duration(time: Time): string {
  return time < ms ? `${plain(time / us, 1)} us` : `${plain(time / ms, 2)} ms`;
}
