import type { Time } from "../../time/time.ts";
import type { Cause, Edge, Level } from "../../wires/edge.ts";

/** A byte that the firmware asked to send, as the wires show it. */
export interface HostFrame {
  /** The firmware pulled the clock low; undefined where the mouse had done so before. */
  readonly held: Time | undefined;
  /** Clock high and data low: the mouse may begin. */
  readonly released: Time;
  /** Of the hold. */
  readonly cause: Cause;
  /** Pulses of the mouse's clock: eleven in a whole frame. */
  readonly falls: readonly Time[];
  readonly rises: readonly Time[];
  /** Changes of the data line since the release. */
  readonly data: readonly Edge[];
  /** The last pulse, or the firmware's end of it. */
  readonly ended: Time;
  /** `unanswered`: the firmware gave up before the first pulse. `cut`: it did so later. `open`: the run ended. */
  readonly outcome: "whole" | "unanswered" | "cut" | "open";
}

/** The firmware held the clock low without asking to send. */
export interface Hold {
  /** Undefined where the mouse had pulled the clock low before. */
  readonly from: Time | undefined;
  readonly to: Time;
  readonly cause: Cause;
}

export interface HostSide {
  readonly frames: readonly HostFrame[];
  readonly holds: readonly Hold[];
}

type Writable<T> = { -readonly [key in keyof T]: T[key] };

interface OpenFrame extends Writable<Omit<HostFrame, "falls" | "rises" | "data">> {
  readonly falls: Time[];
  readonly rises: Time[];
  readonly data: Edge[];
}

/** Pulses of a byte to the mouse: ten bits and the acknowledge. The PS/2 Mouse/Keyboard Protocol, Host-to-Device. */
export const PULSES = 11;

/** What the firmware did on the PS/2 wires, found from who made each edge. */
export function hostSide(edges: readonly Edge[], busyAfterClock: Time): HostSide {
  const walk = new Walk(busyAfterClock);
  for (const edge of edges) {
    if (edge.wire === "clock") walk.clock(edge);
    else if (edge.wire === "data") walk.data(edge);
  }
  return walk.end();
}

/** Level of the data line at a moment of a frame. */
export function dataAt({ data }: HostFrame, time: Time): Level {
  let level: Level = 0;
  for (const edge of data) {
    if (edge.time > time) break;
    level = edge.level;
  }
  return level;
}

class Walk {
  readonly #frames: OpenFrame[] = [];
  readonly #holds: Hold[] = [];
  readonly #busyAfterClock: Time;
  #frame: OpenFrame | undefined;
  #clockFall: Edge | undefined;
  #dataFall: Edge | undefined;
  #clockLevel: Level = 1;
  #dataLevel: Level = 1;
  #mouseClock = Number.NEGATIVE_INFINITY;

  constructor(busyAfterClock: Time) {
    this.#busyAfterClock = busyAfterClock;
  }

  clock(edge: Edge): void {
    this.#clockLevel = edge.level;
    if (edge.level === 0) this.#clockFalls(edge);
    else this.#clockRises(edge);
  }

  data(edge: Edge): void {
    this.#dataLevel = edge.level;
    this.#frame?.data.push(edge);
    if (edge.level === 0) this.#dataFall = edge;
    if (edge.cause.party !== "firmware") return;
    if (this.#frame !== undefined) {
      if (edge.level === 1 && this.#frame.falls.length === 0) this.#close("unanswered", edge.time);
    } else if (
      edge.level === 0 &&
      this.#clockLevel === 1 &&
      edge.time - this.#mouseClock > this.#busyAfterClock
    ) {
      this.#requestBehindRelease(edge);
    }
  }

  end(): HostSide {
    const last = this.#frame?.rises.at(-1) ?? this.#frame?.released;
    if (last !== undefined) this.#close("open", last);
    return { frames: this.#frames, holds: this.#holds };
  }

  #clockFalls(edge: Edge): void {
    this.#clockFall = edge;
    if (edge.cause.party === "mouse") {
      this.#mouseClock = edge.time;
      this.#frame?.falls.push(edge.time);
    } else if (edge.cause.party === "firmware" && this.#frame !== undefined) {
      this.#close(this.#frame.falls.length === 0 ? "unanswered" : "cut", edge.time);
    }
  }

  #clockRises(edge: Edge): void {
    const frame = this.#frame;
    if (frame !== undefined) {
      frame.rises.push(edge.time);
      if (frame.rises.length === PULSES) this.#close("whole", edge.time);
    }
    if (edge.cause.party !== "firmware") return;
    const fall = this.#clockFall;
    const from = fall?.cause.party === "firmware" ? fall.time : undefined;
    const cause = fall?.cause.party === "firmware" ? fall.cause : edge.cause;
    if (this.#frame !== undefined) return;
    if (this.#dataLevel === 0 && this.#dataFall?.cause.party === "firmware")
      this.#open(from, edge.time, cause);
    else this.#holds.push({ from, to: edge.time, cause });
  }

  /** Data goes low only when the clock is high again: a request all the same. */
  #requestBehindRelease(edge: Edge): void {
    const hold = this.#holds.at(-1);
    const isNear = hold !== undefined && edge.time - hold.to <= this.#busyAfterClock;
    if (isNear) this.#holds.pop();
    this.#open(isNear ? hold.from : undefined, edge.time, isNear ? hold.cause : edge.cause);
  }

  #open(held: Time | undefined, released: Time, cause: Cause): void {
    const frame: OpenFrame = {
      held,
      released,
      cause,
      falls: [],
      rises: [],
      data: [],
      ended: released,
      outcome: "open",
    };
    this.#frame = frame;
    this.#frames.push(frame);
  }

  #close(outcome: HostFrame["outcome"], time: Time): void {
    if (this.#frame === undefined) return;
    this.#frame.outcome = outcome;
    this.#frame.ended = time;
    this.#frame = undefined;
  }
}
