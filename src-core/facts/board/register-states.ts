import { type Step, stepsIn } from "../serial/steps.ts";
import type { RegisterWrite, Walk } from "../walk/events.ts";
import type { Bits } from "../walk/values.ts";
import { isHandler } from "./handlers.ts";

/** What a register holds once the program has written it for the last time, as far as the text tells. */
export interface RegisterState {
  readonly bits: Bits;
  /** Every write of the program, in order. */
  readonly writes: readonly RegisterWrite[];
}

/** By name, those registers that the program writes outside of interrupt handlers; all others are as after a reset. */
export function registerStates(walk: Walk): ReadonlyMap<string, RegisterState> {
  const states = new Map<string, { bits: Bits; readonly writes: RegisterWrite[] }>();
  for (const { entry, events } of walk.entries) {
    if (isHandler(entry)) continue;
    for (const step of stepsIn(events, ({ kind }) => kind === "register-write")) {
      const { event } = step;
      if (event.kind !== "register-write") continue;
      const { name } = event.register;
      const before = states.get(name);
      const bits = bitsAfter(event, step, before?.bits);
      if (before === undefined) states.set(name, { bits, writes: [event] });
      else {
        before.bits = bits;
        before.writes.push(event);
      }
    }
  }
  return states;
}

/** After a write that may not happen only what is the same either way is known. */
function bitsAfter({ after }: RegisterWrite, { conditional }: Step, before: Bits | undefined): Bits {
  if (!conditional || before === undefined) return after;
  const known = before.known & after.known & ~(before.ones ^ after.ones);
  return { known, ones: after.ones & known };
}
