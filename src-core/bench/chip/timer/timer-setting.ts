import type { WaveMode } from "../../../model/chips/timer-modes.ts";

/** What a timer's control registers say. */
export interface TimerSetting extends WaveMode {
  readonly clock: TimerClock;
  /** By channel: what a match does to the pin. */
  readonly actions: readonly PinAction[];
}

export type TimerClock =
  | { readonly kind: "stopped" }
  | { readonly kind: "divided"; readonly divider: number }
  | { readonly kind: "pin"; readonly edge: "falling" | "rising" };

export type PinAction = "none" | "toggle" | "clear" | "set";

const pinActions = ["none", "toggle", "clear", "set"] as const;

/** The action of the two bits COMnx1:0. */
export function pinAction(bits: number): PinAction {
  return pinActions[bits] ?? "none";
}
