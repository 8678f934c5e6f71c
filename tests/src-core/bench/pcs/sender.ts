import type { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import type { DrivenWire } from "../../../../src-core/bench/wires/driven-wire.ts";
import type { At } from "../../../../src-core/reader/typed/nodes.ts";

/** How a byte is put on the line: "1 start bit, 7 data bits, no parity and one stop bit" and the like, mouse(4). */
export interface Sending {
  /** One bit, in picoseconds. */
  readonly bit: number;
  readonly dataBits: number;
  readonly stopBits: number;
}

/** 1200 bit/s, 7 data bits, one stop bit: mouse(4). */
export const sevenOne: Sending = { bit: 1e12 / 1200, dataBits: 7, stopBits: 1 };
/** 1200 bit/s, 8 data bits, two stop bits: mouse(4), table of the five-byte packet. */
export const eightTwo: Sending = { bit: 1e12 / 1200, dataBits: 8, stopBits: 2 };

/** Drives the line bit by bit, low bit first; gives the moment when the last stop bit ends. */
export function send(
  queue: EventQueue,
  line: DrivenWire,
  from: number,
  bytes: readonly number[],
  { bit, dataBits, stopBits }: Sending = sevenOne,
  at?: At,
): number {
  const cause = { party: "firmware", at } as const;
  let slot = 0;
  for (const byte of bytes) {
    const levels = [0];
    for (let index = 0; index < dataBits; index++) levels.push(Math.floor(byte / 2 ** index) % 2);
    for (let index = 0; index < stopBits; index++) levels.push(1);
    for (const level of levels) {
      queue.at(Math.round(from + slot * bit), () => line.drive(level === 1 ? 1 : 0, cause));
      slot++;
    }
  }
  return Math.round(from + slot * bit);
}

/** Puts the line at a level at a moment. */
export function drive(queue: EventQueue, line: DrivenWire, time: number, level: 0 | 1, at?: At): void {
  queue.at(time, () => line.drive(level, { party: "firmware", at }));
}
