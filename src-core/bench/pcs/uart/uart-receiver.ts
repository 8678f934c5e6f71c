import { FIRST_SAMPLE } from "../../../model/receiver-tolerance.ts";
import type { Event, EventQueue } from "../../time/event-queue.ts";
import { cycleAt, type Time, timeOfCycle } from "../../time/time.ts";
import type { DrivenWire } from "../../wires/driven-wire.ts";
import type { Edge, Level } from "../../wires/edge.ts";
import type { ReceivedByte } from "./received-byte.ts";

/** The line as the receiver is set: no parity, and one stop bit that is looked at. */
export interface UartLine {
  readonly baud: number;
  readonly dataBits: 7 | 8;
}

const SAMPLES = 16;
const VOTES = 3;

/**
 * The receiving half of a UART. It samples sixteen times per bit; three samples in the middle of a bit vote on it. A
 * start bit begins with the first sample at space after mark, and is dropped as noise when its middle is mark. Once
 * two votes say that the stop bit is mark, the next start bit may come; it has to begin with an edge, so that a break is
 * told once.
 * ATmega328P datasheet 7810C, "Asynchronous Data Reception" and Table 19-2; how far a sender may be off follows from it.
 *
 * Samples are not events: an edge settles all samples before it, and one event ends the byte.
 */
export class UartReceiver {
  /** Starts that were none: mark again in the middle of the start bit. */
  falseStarts = 0;
  readonly #queue: EventQueue;
  readonly #line: UartLine;
  readonly #listener: (byte: ReceivedByte) => void;
  readonly #hz: number;
  #level: Level;
  /** The sample that saw the start bit; undefined between bytes. */
  #start: number | undefined;
  #end: Event | undefined;
  /** Votes taken since the start, and what they have said. */
  #votes = 0;
  #marks = 0;
  #value = 0;

  constructor(queue: EventQueue, wire: DrivenWire, line: UartLine, listener: (byte: ReceivedByte) => void) {
    this.#queue = queue;
    this.#line = line;
    this.#listener = listener;
    this.#hz = SAMPLES * line.baud;
    this.#level = wire.level;
    wire.onEdge((edge) => this.#edge(edge));
  }

  #edge({ time, level }: Edge): void {
    this.#sampleBefore(time);
    this.#level = level;
    if (level === 0) {
      if (this.#start === undefined) this.#begin(cycleAt(time, this.#hz));
    } else if (this.#start !== undefined && timeOfCycle(this.#start, this.#hz) >= time) {
      // Too short for any sample to see it.
      this.#drop();
    }
  }

  #begin(sample: number): void {
    this.#start = sample;
    this.#votes = 0;
    this.#marks = 0;
    this.#value = 0;
    this.#endAt(sample, this.#lastVote - 1);
  }

  /** The last vote on the stop bit. */
  get #lastVote(): number {
    return (this.#line.dataBits + 2) * VOTES - 1;
  }

  #endAt(start: number, vote: number): void {
    this.#end = this.#queue.at(this.#timeOfVote(start, vote), () => {
      this.#sampleBefore(this.#queue.now + 1);
      if (this.#start === start) this.#endAt(start, this.#lastVote);
    });
  }

  #drop(): void {
    this.#start = undefined;
    if (this.#end !== undefined) this.#end.cancelled = true;
  }

  #timeOfVote(start: number, vote: number): Time {
    const bit = Math.floor(vote / VOTES);
    return timeOfCycle(start + bit * SAMPLES + FIRST_SAMPLE[SAMPLES] - 1 + (vote % VOTES), this.#hz);
  }

  /** The line has been at `#level` since the last edge. */
  #sampleBefore(time: Time): void {
    while (this.#start !== undefined) {
      const at = this.#timeOfVote(this.#start, this.#votes);
      if (at >= time) return;
      this.#marks += this.#level;
      this.#votes += 1;
      if (this.#votes % VOTES === 0) this.#bit(this.#start, this.#votes / VOTES - 1, at);
      else if (this.#votes === this.#lastVote && this.#marks === VOTES - 1)
        this.#finish(this.#start, at, true);
    }
  }

  #bit(start: number, index: number, time: Time): void {
    const level = 2 * this.#marks > VOTES ? 1 : 0;
    this.#marks = 0;
    if (index === 0) {
      if (level === 0) return;
      this.falseStarts += 1;
      this.#drop();
    } else if (index <= this.#line.dataBits) {
      this.#value |= level << (index - 1);
    } else {
      this.#finish(start, time, level === 1);
    }
  }

  #finish(start: number, time: Time, stopped: boolean): void {
    const value = this.#value;
    const fault = stopped ? undefined : value === 0 ? "break" : "framing";
    this.#start = undefined;
    this.#listener({ from: timeOfCycle(start, this.#hz), time, value, fault });
  }
}
