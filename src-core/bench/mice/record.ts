import type { ReportValues } from "../../model/layouts/values.ts";
import type { Time } from "../time/time.ts";

/** What a mouse saw and did, each list in order of time. */
export interface MouseRecord {
  readonly sent: readonly SentFrame[];
  readonly received: readonly ReceivedFrame[];
  readonly reports: readonly MouseReport[];
  readonly happenings: readonly Happening[];
}

/** Falling edges of the clock as the mouse made them; 0 for both where there were fewer than two. */
export interface ClockPeriods {
  readonly leastPeriod: Time;
  readonly mostPeriod: Time;
}

/** A byte to the host, whole or cut off. */
export interface SentFrame extends ClockPeriods {
  /** When the start bit came onto the data line. */
  readonly start: Time;
  /** When the clock fell for the last of the data bits; undefined where it never did. */
  readonly readableAt: Time | undefined;
  /** When the clock had risen for the last time, or when the mouse saw that the host cut in. */
  readonly end: Time;
  /** As the mouse meant it. */
  readonly byte: number;
  readonly whole: boolean;
  /** Clock pulses made. */
  readonly clocks: number;
  /** It had been sent before, in whole or in part. */
  readonly resent: boolean;
  /** A bit was turned over on the way. */
  readonly disturbed: boolean;
  /** Index of the report in `reports`; undefined for replies. */
  readonly report: number | undefined;
}

/** What was wrong with a byte from the host. */
export type ReceiveFault = "none" | "parity" | "stop" | "cut-off";

/** A byte from the host. */
export interface ReceivedFrame extends ClockPeriods {
  /** How long the host had held the clock low. */
  readonly hold: Time;
  /** When the host's clock line was high again. */
  readonly released: Time;
  /** First falling edge of the mouse's clock. */
  readonly start: Time;
  readonly end: Time;
  /** Of a byte that was cut off, the bits that came are there. */
  readonly byte: number;
  readonly fault: ReceiveFault;
}

/** Counts in the sense of PS/2 reports: x to the right, y upwards, wheel towards the user. */
export interface Counts {
  readonly x: number;
  readonly y: number;
  readonly wheel: number;
}

export interface MouseReport {
  /** When the mouse read its counters. */
  readonly sampled: Time;
  readonly bytes: readonly number[];
  /** Counts and buttons as the report carries them. */
  readonly values: ReportValues;
  /** Counts that did not fit and are gone: an overflow. */
  readonly lost: Counts;
  /** When its last byte was whole for the first time; undefined where a command or a restart came before. */
  sentAt: Time | undefined;
  /** From then on a host that waits for no more than the data bits knew all of it; before `sentAt`. */
  readableAt: Time | undefined;
}

export type Happening =
  | { readonly kind: "powered" | "unplugged" | "chose-ps2" | "chose-usb" | "glitch"; readonly time: Time }
  | {
      readonly kind: "self-test";
      readonly time: Time;
      readonly length: Time;
      readonly because: "power-on" | "reset-command" | "own-restart";
    }
  /** A command came, and the mouse forgot what had moved since the last report. */
  | { readonly kind: "counters-cleared"; readonly time: Time; readonly counts: Counts }
  /** The host asked to send, and had held the clock too short for this mouse to notice. */
  | { readonly kind: "request-unnoticed"; readonly time: Time; readonly hold: Time };
