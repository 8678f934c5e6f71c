import type { RunDetails } from "../../run-details.ts";
import type { Lane, TimeWindow } from "./ribbon.ts";

/** A byte that went over the mouse's wires or the PC's line. */
export interface CarriedByte extends TimeWindow {
  readonly byte: number;
  readonly lane: Lane["id"];
}

/** The bytes of a run on both sides, in order of time. */
export function carriedBytes({ frames, serialBytes }: RunDetails): readonly CarriedByte[] {
  const mouse = frames.map(({ from, to, byte }): CarriedByte => ({ from, to, byte, lane: "mouse" }));
  const pc = serialBytes.map(({ from, to, byte }): CarriedByte => ({ from, to, byte, lane: "pc" }));
  return [...mouse, ...pc].sort((a, b) => a.from - b.from);
}
