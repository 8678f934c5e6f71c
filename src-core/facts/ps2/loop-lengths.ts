import { delayOf } from "../board/delay-calls.ts";
import type { Event, LoopEvent, OutsideCall } from "../walk/events.ts";
import { holdingKind } from "../walk/in-order.ts";
import { numberOf, type Value } from "../walk/values.ts";

/** How long something takes that nothing cuts short. */
interface Length {
  /** By its delays and time-outs. */
  readonly us: number;
  /** By what is done between the delays, which the text does not tell: more than compilers make of it. */
  readonly cycles: number;
}

const nothing: Length = { us: 0, cycles: 0 };

/** To look at a pin, test it, count and begin again; to go into a function of the core and back. */
const cyclesOfTurn = 24;
const cyclesOfCall = 64;

/** Tells how long loops last while the mouse is silent; each list of events is gone through once. */
export class LoopLengths {
  readonly #clockHz: number | undefined;
  readonly #known = new Map<readonly Event[], Length | undefined>();

  constructor(clockHz: number | undefined) {
    this.#clockHz = clockHz;
  }

  /** The longest turn, turns of loops inside included; undefined where it is not known. */
  ofTurn(loop: LoopEvent): Length | undefined {
    const turn = this.#longest(loop.passes);
    return turn && { us: turn.us, cycles: turn.cycles + cyclesOfTurn };
  }

  /** Microseconds that so many cycles take at most. */
  usOf(cycles: number): number {
    return (cycles * 1e6) / (this.#clockHz ?? slowClockHz);
  }

  #of(events: readonly Event[]): Length | undefined {
    if (!takesTime(events)) return nothing;
    if (this.#known.has(events)) return this.#known.get(events);
    let all: Length | undefined = nothing;
    for (const event of events) {
      const one = this.#one(event);
      all = one && { us: all.us + one.us, cycles: all.cycles + one.cycles };
      if (all === undefined) break;
    }
    this.#known.set(events, all);
    return all;
  }

  #one(event: Event): Length | undefined {
    switch (event.kind) {
      case "outside-call":
        return this.#call(event);
      case "call":
        return this.#of(event.events);
      case "branch":
        return this.#longest(event.sides);
      case "loop":
        return this.#loop(event);
      default:
        return nothing;
    }
  }

  #call(call: OutsideCall): Length | undefined {
    const delay = delayOf(call, this.#clockHz);
    if (delay === undefined) return { us: 0, cycles: cyclesOfCall };
    return delay.us === undefined ? undefined : { us: delay.us, cycles: 0 };
  }

  #longest(lists: readonly (readonly Event[])[]): Length | undefined {
    let longest = nothing;
    for (const list of lists) {
      const one = this.#of(list);
      if (one === undefined) return undefined;
      if (one.us >= longest.us) longest = one;
    }
    return longest;
  }

  #loop(loop: LoopEvent): Length | undefined {
    const limit = timeLimit(loop);
    if (limit !== undefined) return { us: limit.us, cycles: 0 };
    const turn = this.ofTurn(loop);
    if (turn === undefined) return undefined;
    const turns = loop.turns ?? loop.atMost;
    // What only looks takes no time that anybody could tell.
    if (turns === undefined) return turn.us === 0 ? turn : undefined;
    return { us: turns * turn.us, cycles: turns * turn.cycles };
  }
}

/** A slow one of the usual clocks, for boards whose clock nobody has said. */
const slowClockHz = 8e6;

const takesTime = holdingKind("outside-call", "time-test");
const testsTime = holdingKind("time-test");

interface TimeLimit {
  readonly us: number;
  readonly unitUs: number;
  readonly limit: Value;
  readonly event: Event;
}

/** A comparison of elapsed time with a known limit in a loop, but in no other loop inside. */
export function timeLimit(loop: LoopEvent): TimeLimit | undefined {
  return timeLimitIn(loop.passes[0] ?? []);
}

function timeLimitIn(events: readonly Event[]): TimeLimit | undefined {
  if (!testsTime(events)) return undefined;
  for (const event of events) {
    const found = event.kind === "time-test" ? limitOf(event) : insideOf(event);
    if (found !== undefined) return found;
  }
  return undefined;
}

function insideOf(event: Event): TimeLimit | undefined {
  if (event.kind === "call") return timeLimitIn(event.events);
  if (event.kind !== "branch") return undefined;
  for (const side of event.sides) {
    const found = timeLimitIn(side);
    if (found !== undefined) return found;
  }
  return undefined;
}

function limitOf(event: Extract<Event, { kind: "time-test" }>): TimeLimit | undefined {
  const { elapsed, limit } = event;
  const value = numberOf(limit);
  const trace = elapsed.kind === "unknown" ? elapsed.traces.find(({ kind }) => kind === "time") : undefined;
  if (value === undefined || trace?.kind !== "time" || trace.unit === "tick") return undefined;
  const unitUs = trace.unit === "ms" ? 1000 : 1;
  return { us: value * unitUs, unitUs, limit, event };
}
