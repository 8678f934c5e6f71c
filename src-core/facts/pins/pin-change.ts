import type { Value } from "../walk/values.ts";

/** `PD2` where the pin's port bit is known, else the board number as `#2`. */
export type PinName = string;

/** A bit that is 0, 1, or either. */
export type Tristate = 0 | 1 | undefined;

/** A pin's two bits: direction (1 = output) and output latch (pull-up where it is an input). */
export interface PinState {
  readonly output: Tristate;
  readonly latch: Tristate;
}

/** What a write did to a pin. */
export interface PinChange {
  readonly pin: PinName;
  readonly before: PinState;
  readonly after: PinState;
  /** The value that decides: the level for `digitalWrite`, the mode for `pinMode`, the register's value. */
  readonly value: Value | undefined;
}

/**
 * How a pin acts on its line: pulled low, driven high, let go (with or without the chip's pull-up), or not
 * known. `level-unknown` is an output whose level is not known.
 */
type Drive = "low" | "high" | "level-unknown" | "released" | "pulled-up" | "released-unknown" | "unknown";

export function driveOf(state: PinState): Drive {
  if (state.output === 1) return state.latch === 0 ? "low" : state.latch === 1 ? "high" : "level-unknown";
  if (state.output === 0)
    return state.latch === 0 ? "released" : state.latch === 1 ? "pulled-up" : "released-unknown";
  return "unknown";
}
