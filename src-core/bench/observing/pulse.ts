import type { At } from "../../reader/typed/nodes.ts";
import type { Time } from "../time/time.ts";

/** Which bits of a port the code at a place looks at. */
export interface Look {
  readonly mask: number;
  readonly at: At | undefined;
}

/** The mask of somebody of whom it is not known what he looks at. */
export const anything = 0xff;

/** One pulse of the mouse's clock, as the firmware met it. */
export interface Pulse {
  readonly fall: Time;
  /** An interrupt tells of it. */
  byInterrupt: boolean;
  /** The interrupt's handler came in time, or the code looked at the clock while it was low. */
  isSeen: boolean;
  /** The interrupt was still waiting when the clock rose: what the handler reads is no longer this bit for sure. */
  isLate: boolean;
  /** How often the code asked the UART that sends whether it is free, until the next pulse. */
  uartLooks: number;
  /** Where the code was when it began, and when the next one did. */
  readonly began: At | undefined;
  next: At | undefined;
  /** Data was, or may have been, looked at while the clock was low. */
  readWhileLow: boolean;
  /** Data, and nothing but data of the two lines, was looked at behind the pulse, with the clock high. */
  readLate: LateRead | undefined;
}

export interface LateRead {
  readonly time: Time;
  readonly at: At | undefined;
}
