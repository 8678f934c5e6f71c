import type { At } from "../../reader/typed/nodes.ts";
import type { Time } from "../time/time.ts";

export type Level = 0 | 1;

/** Who is at an end of a wire. */
export type Party = "mouse" | "firmware" | "pc" | "pull-up";

/** What made a wire change. */
export interface Cause {
  readonly party: Party;
  /** Where the firmware's source says so; undefined for the others, and where nobody knows. */
  readonly at: At | undefined;
  /**
   * Where the code of the firmware made it: 0 outside of interrupt handlers, else the how manieth run of a handler it was. Undefined for
   * others, for what a part of the chip did without the code, and where nobody knows.
   */
  readonly run?: number;
}

/** A wire's change of level. */
export interface Edge {
  readonly time: Time;
  readonly wire: WireName;
  readonly level: Level;
  readonly cause: Cause;
}

/**
 * `clock` and `data` are the PS/2 lines; the others those of the serial side at the PC's connector, where 1 is mark or
 * OFF and 0 is space or ON.
 */
export type WireName = "clock" | "data" | "rxd" | "txd" | "rts" | "dtr";

export type EdgeListener = (edge: Edge) => void;
