import { ms, type Time } from "../../bench/time/time.ts";
import type { TimeWindow } from "./ribbon.ts";

/** In milliseconds since power-up; undefined for the beginning and the end of the run. */
export interface AskedWindow {
  readonly from: number | undefined;
  readonly to: number | undefined;
}

/** What of a run is asked for; in one sentence, why there is nothing of it. */
export function windowOf(
  { from = 0, to }: AskedWindow,
  ended: Time,
): TimeWindow | { readonly nothing: string } {
  const window = { from: Math.round(from * ms), to: Math.min(Math.round((to ?? ended / ms) * ms), ended) };
  if (window.from < window.to) return window;
  return {
    nothing: `nothing lies between ${from} ms and ${to ?? ended / ms} ms: the run ends at ${ended / ms} ms`,
  };
}
