import type { Time } from "../../time/time.ts";

/** What a UART made of one start bit. */
export interface ReceivedByte {
  /** When the start bit was seen. */
  readonly from: Time;
  /** When the stop bit had been looked at: the byte is there. */
  readonly time: Time;
  /** Data bits, the first one lowest. */
  readonly value: number;
  /** The stop bit was space: `break` where all data bits were space too. */
  readonly fault: "framing" | "break" | undefined;
}
