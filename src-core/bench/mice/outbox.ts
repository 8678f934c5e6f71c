import type { Time } from "../time/time.ts";
import type { OutgoingByte } from "./line/mouse-line.ts";
import type { MouseReport } from "./record.ts";

/** Bytes that belong together: when the host cuts into one, all are sent again. */
export interface Transmission {
  readonly bytes: readonly number[];
  readonly notBefore: Time;
  /** The report that the bytes are, and its place among the reports. */
  readonly report: { readonly of: MouseReport; readonly index: number } | undefined;
  /** The mouse tests itself when the last byte is whole. */
  readonly thenSelfTest: boolean;
}

interface Waiting extends Transmission {
  /** The byte that comes next. */
  next: number;
  /** Bytes that were begun at least once. */
  begun: number;
}

/** What the mouse still has to send, in order. */
export class Outbox {
  /** Every so-manieth byte of reports arrives with a bit turned over; 0 for none. */
  readonly #disturbedEvery: number;
  #waiting: Waiting[] = [];
  #last: Waiting | undefined;
  #reportBytes = 0;

  constructor(disturbedEvery: number) {
    this.#disturbedEvery = disturbedEvery;
  }

  get holdsReport(): boolean {
    return this.#waiting.some((each) => each.report !== undefined);
  }

  add(transmission: Transmission): void {
    this.#waiting.push({ ...transmission, next: 0, begun: 0 });
  }

  drop(): void {
    this.#waiting = [];
  }

  /** As after a self-test: there is nothing to repeat either. */
  forget(): void {
    this.#waiting = [];
    this.#last = undefined;
  }

  /** Sends the last transmission again, before all others; `notBefore` is the earliest moment. */
  repeat(notBefore: Time): void {
    const last = this.#last;
    if (last === undefined) return;
    this.#waiting = this.#waiting.filter((each) => each !== last);
    this.#last = { ...last, notBefore, next: 0, thenSelfTest: false };
    this.#waiting.unshift(this.#last);
  }

  outgoing(): OutgoingByte | undefined {
    const first = this.#waiting[0];
    const byte = first?.bytes[first.next];
    if (first === undefined || byte === undefined) return undefined;
    const resent = first.next < first.begun;
    return {
      byte,
      notBefore: first.notBefore,
      turnedBits: first.report === undefined || resent ? 0 : this.#disturbance(),
      resent,
      report: first.report?.index,
    };
  }

  /** Takes note that the byte asked for last was sent; gives the transmission of which it was the last. */
  sent(whole: boolean): { readonly whole: Transmission | undefined; readonly bytesBefore: number } {
    const first = this.#waiting[0];
    if (first === undefined) return { whole: undefined, bytesBefore: 0 };
    this.#last = first;
    if (first.report !== undefined && first.next >= first.begun) this.#reportBytes += 1;
    first.begun = Math.max(first.begun, first.next + 1);
    first.next = whole ? first.next + 1 : 0;
    if (first.next < first.bytes.length) return { whole: undefined, bytesBefore: first.next };
    this.#waiting.shift();
    return { whole: first, bytesBefore: first.next };
  }

  /** Another data bit each time. */
  #disturbance(): number {
    const every = this.#disturbedEvery;
    if (every === 0 || (this.#reportBytes + 1) % every !== 0) return 0;
    return 1 << (1 + (((this.#reportBytes + 1) / every) % 8));
  }
}
