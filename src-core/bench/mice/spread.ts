import type { Time } from "../time/time.ts";

/** A duration that is drawn anew each time, both ends included. */
export interface Spread {
  readonly least: Time;
  readonly most: Time;
}

export function exactly(time: Time): Spread {
  return { least: time, most: time };
}

export function between(least: Time, most: Time): Spread {
  return { least, most };
}
