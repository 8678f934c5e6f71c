import type { EventQueue } from "../../../../src-core/bench/time/event-queue.ts";
import type { Edge } from "../../../../src-core/bench/wires/edge.ts";
import type { Wires } from "../../../../src-core/bench/wires/wires.ts";

/** Picoseconds, typed here once more so that the host owes nothing to the bench but the wires. */
const microsecond = 1_000_000;
const millisecond = 1_000_000_000;

/** A byte as the host read it from the wires. */
export interface HeardByte {
  readonly byte: number;
  /** Start 0, odd parity and stop 1 were as they have to be. */
  readonly sound: boolean;
  /** First and last falling edge. */
  readonly start: number;
  readonly end: number;
}

export interface SendOptions {
  /** How long the clock is held, in us; 100 is what documents ask for. */
  readonly hold?: number;
  readonly wrongParity?: boolean;
  /** Keeps data low in the place of the stop bit for so many more clocks. */
  readonly stopLateBy?: number;
  /** Pulls the clock low in the middle of this bit (1 is the first data bit) and gives up. */
  readonly giveUpAtClock?: number;
  /** Each bit is right from 4 us after the clock rose to 26 us after, and wrong before and behind. */
  readonly narrowBits?: boolean;
}

interface Sending {
  readonly byte: number;
  readonly options: SendOptions;
  clocks: number;
}

const cause = { party: "firmware", at: undefined } as const;

/**
 * The host of "The PS/2 Mouse/Keyboard Protocol" (Adam Chapweske, 2003), written from that text: it reads data while
 * the clock is low, 15 us after the falling edge; to send, it holds the clock low, pulls data low, lets the clock go,
 * and changes data while the clock is low.
 */
export class DatasheetHost {
  readonly heard: HeardByte[] = [];
  readonly #queue: EventQueue;
  readonly #wires: Wires;
  #bits: number[] = [];
  #firstFall = 0;
  #lastFall = 0;
  #sending: Sending | undefined;
  #inhibiting = false;
  /** The acknowledge bit of each byte sent: data at the last clock. */
  readonly acknowledged: boolean[] = [];
  /** Cuts into the mouse's byte at this clock, once. */
  cutAtClock: number | undefined;
  /** For how long, in us. */
  cutFor = 100;
  cuts = 0;
  /** Takes no notice of the clock. */
  deaf = false;

  constructor(queue: EventQueue, wires: Wires) {
    this.#queue = queue;
    this.#wires = wires;
    wires.clock.pullUp("firmware", true, cause);
    wires.data.pullUp("firmware", true, cause);
    wires.clock.onEdge((edge) => this.#edge(edge));
  }

  get isSending(): boolean {
    return this.#sending !== undefined;
  }

  bytes(): readonly number[] {
    return this.heard.map(({ byte }) => byte);
  }

  forget(): void {
    this.heard.length = 0;
  }

  hold(clock: "low" | "released", data: "low" | "released" = "released"): void {
    this.#inhibiting = clock === "low";
    this.#bits = [];
    this.#wires.clock.drive("firmware", clock, cause);
    this.#wires.data.drive("firmware", data, cause);
  }

  send(byte: number, options: SendOptions = {}): void {
    this.hold("low");
    this.#sending = { byte, options, clocks: 0 };
    this.#queue.after(Math.round((options.hold ?? 100) * microsecond), () => {
      this.#wires.data.drive("firmware", "low", cause);
      this.#inhibiting = false;
      this.#wires.clock.drive("firmware", "released", cause);
    });
  }

  giveUp(): void {
    this.#sending = undefined;
    this.hold("released");
  }

  #edge(edge: Edge): void {
    if (this.#inhibiting || this.deaf) return;
    if (edge.level === 1) {
      if (this.#sending?.options.narrowBits === true) this.#putNarrowBit(this.#sending);
      return;
    }
    if (this.#sending !== undefined) this.#sendBit(this.#sending);
    else this.#readSoon();
  }

  #sendBit(sending: Sending): void {
    sending.clocks += 1;
    const { byte, options, clocks } = sending;
    if (options.narrowBits === true && clocks < 10) return;
    this.#queue.after(10 * microsecond, () => {
      if (clocks === options.giveUpAtClock) {
        this.#sending = undefined;
        this.hold("low");
        this.#queue.after(200 * microsecond, () => this.hold("released"));
        return;
      }
      const lastClock = 11 + (options.stopLateBy ?? 0);
      const level = clocks <= 10 ? this.#bit(byte, clocks, options) : clocks < lastClock ? 0 : 1;
      this.#wires.data.drive("firmware", level === 1 ? "released" : "low", cause);
      if (clocks < lastClock) return;
      this.#sending = undefined;
      this.#queue.after(5 * microsecond, () => this.acknowledged.push(this.#wires.data.level === 0));
    });
  }

  #putNarrowBit({ byte, options, clocks }: Sending): void {
    if (clocks === 0 || clocks > 9) return;
    const right = this.#bit(byte, clocks, options);
    const put = (level: number) =>
      this.#wires.data.drive("firmware", level === 1 ? "released" : "low", cause);
    // The line takes a microsecond to rise, so it is let go that much earlier.
    const early = (level: number) => (level === 1 ? microsecond : 0);
    put(1 - right);
    this.#queue.after(4 * microsecond - early(right), () => put(right));
    this.#queue.after(26 * microsecond - early(1 - right), () => put(1 - right));
  }

  #bit(byte: number, clock: number, options: SendOptions): number {
    if (clock <= 8) return (byte >> (clock - 1)) & 1;
    if (clock === 10) return (options.stopLateBy ?? 0) > 0 ? 0 : 1;
    const ones = byte.toString(2).replaceAll("0", "").length;
    const odd = ones % 2 === 0 ? 1 : 0;
    return options.wrongParity === true ? 1 - odd : odd;
  }

  #readSoon(): void {
    const now = this.#queue.now;
    // A gap longer than a whole byte takes at most (2 ms): what came before was no byte.
    if (this.#bits.length > 0 && now - this.#lastFall > 2 * millisecond) this.#bits = [];
    if (this.#bits.length === 0) this.#firstFall = now;
    this.#lastFall = now;
    const bits = this.#bits;
    this.#queue.after(15 * microsecond, () => this.#read(bits));
  }

  #read(bits: number[]): void {
    if (bits !== this.#bits) return;
    bits.push(this.#wires.data.level);
    if (bits.length === this.cutAtClock) {
      this.cutAtClock = undefined;
      this.cuts += 1;
      // The clock is low now; held on, it stays low after the mouse has let it go.
      this.hold("low");
      this.#queue.after(Math.round(this.cutFor * microsecond), () => this.hold("released"));
      return;
    }
    if (bits.length < 11) return;
    const data = bits.slice(1, 9);
    const ones = bits.slice(1, 10).filter((bit) => bit === 1).length;
    this.heard.push({
      byte: data.reduce((sum, bit, index) => sum + bit * 2 ** index, 0),
      sound: bits[0] === 0 && ones % 2 === 1 && bits[10] === 1,
      start: this.#firstFall,
      end: this.#lastFall,
    });
    this.#bits = [];
  }
}
