import { visibleRange } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";
import { delayOf } from "../board/delay-calls.ts";
import { driveOf, type PinName } from "../pins/pin-change.ts";
import type { CallEvent, EntryWalk, Event, LoopEvent, OutsideCall } from "../walk/events.ts";
import { type Follower, followPaths, type Leaf } from "../walk/follow.ts";
import { eachOnce, holdingKind, inOrder } from "../walk/in-order.ts";
import { numberOf } from "../walk/values.ts";
import type { HoldPart } from "./ps2-facts.ts";

/** A pin is held low; while it is, another one is low too; then the first is let go. */
export interface Request {
  readonly clock: PinName;
  readonly data: PinName;
  /** The second was pulled low while the first was. */
  readonly inOrder: boolean;
  readonly us: number;
  readonly parts: readonly HoldPart[];
  /** Something of unknown length that happens during the hold. */
  readonly unknown: At | undefined;
  readonly low: Happening;
  readonly release: Happening;
  readonly walk: EntryWalk;
}

interface Happening {
  readonly at: At;
  /** The calls around it, outermost first. */
  readonly calls: readonly CallEvent[];
}

/** A pin that is low now, and what has happened since. */
interface LowPin {
  readonly pin: PinName;
  readonly low: Happening;
  readonly us: number;
  readonly parts: readonly HoldPart[];
  readonly unknown: At | undefined;
}

/** In the order in which they were pulled low. */
type LowPins = readonly LowPin[];

/** A pin that has been low for more delays than this is no clock on hold. */
const mostParts = 12;

const nothingLow: LowPins = [];

/** Every place where a pin is let go while another one is low. */
export function findRequests(walk: EntryWalk, clockHz: number | undefined): Request[] {
  const found: Request[] = [];
  if (!pullsTwoLow(walk)) return found;
  const changesPins = holdingKind("pin");
  const follower: Follower<LowPins> = {
    step: (state, event, calls) => step(state, event, calls, { walk, clockHz, found }),
    join: joinLow,
    behindLoop,
    passesOver: (state, events) => state.length === 0 && !changesPins(events),
  };
  followPaths(walk.events, nothingLow, follower);
  return found;
}

/** Whether more than one pin is ever pulled low: else none is let go while another one is. */
function pullsTwoLow({ events }: EntryWalk): boolean {
  let first: PinName | undefined;
  return eachOnce(events).some((event) => {
    if (event.kind !== "pin" || driveOf(event.change.after) !== "low") return false;
    first ??= event.change.pin;
    return first !== event.change.pin;
  });
}

interface Finding {
  readonly walk: EntryWalk;
  readonly clockHz: number | undefined;
  readonly found: Request[];
}

function step(state: LowPins, event: Leaf, calls: readonly CallEvent[], finding: Finding): LowPins {
  switch (event.kind) {
    case "pin": {
      const { pin, after } = event.change;
      const held = state.find((low) => low.pin === pin);
      const isLow = driveOf(after) === "low";
      if (held === undefined) {
        if (!isLow) return state;
        return [
          ...state,
          { pin, low: { at: event.at, calls: [...calls] }, us: 0, parts: [], unknown: undefined },
        ];
      }
      if (isLow) return state;
      const release: Happening = { at: event.at, calls: [...calls] };
      for (const other of state) {
        if (other !== held) finding.found.push(requestOf(held, other, state, release, finding.walk));
      }
      return state.filter((low) => low !== held);
    }
    case "outside-call":
      return state.length === 0 ? state : addCall(state, event, calls, finding.clockHz);
    case "not-followed":
      return state.length === 0 ? state : addUnknown(state, event.at);
    default:
      return state;
  }
}

function requestOf(
  held: LowPin,
  other: LowPin,
  state: LowPins,
  release: Happening,
  walk: EntryWalk,
): Request {
  return {
    clock: held.pin,
    data: other.pin,
    inOrder: state.indexOf(other) > state.indexOf(held),
    us: held.us,
    parts: held.parts.map(byTheTurn),
    unknown: held.unknown,
    low: held.low,
    release,
    walk,
  };
}

/** `wait_us(70)` that delays 70 times for 1 us: what decides is the 70. */
function byTheTurn(part: HoldPart): HoldPart {
  const turns = part.turnsFrom.find((value) => numberOf(value) === part.times)?.from;
  if (part.times < 2 || part.us === undefined || turns === undefined) return part;
  return {
    us: part.us * part.times,
    times: 1,
    unitUs: part.us,
    turnsFrom: [],
    expression: turns,
    span: visibleRange(turns.at.first, turns.at.last),
  };
}

function addCall(
  state: LowPins,
  call: OutsideCall,
  calls: readonly CallEvent[],
  clockHz: number | undefined,
): LowPins {
  const delay = delayOf(call, clockHz);
  if (delay === undefined) return call.origin === "core" ? state : addUnknown(state, call.at);
  const value = numberOf(delay.length);
  const from = delay.length?.from ?? call.expressions[0];
  const at = from?.at ?? call.at;
  const part: HoldPart = {
    us: delay.us,
    times: 1,
    turnsFrom: turnsFrom(calls),
    unitUs: delay.us !== undefined && value !== undefined && value > 0 ? delay.us / value : undefined,
    expression: from,
    span: visibleRange(at.first, at.last),
  };
  return addPart(state, part, at);
}

/** Integers that the function around a delay was given: one of them may be how often it delays. */
function turnsFrom(calls: readonly CallEvent[]): HoldPart["turnsFrom"] {
  return calls.at(-1)?.arguments.filter((value) => value.kind === "integer") ?? [];
}

function addPart(state: LowPins, part: HoldPart, at: At): LowPins {
  if (part.us === undefined) return addUnknown(state, at);
  const us = part.us * part.times;
  return state.map((low) => {
    const last = low.parts.at(-1);
    if (last !== undefined && last.us === part.us && isSamePlace(last, part)) {
      const more = { ...last, times: last.times + part.times };
      return { ...low, us: low.us + us, parts: [...low.parts.slice(0, -1), more] };
    }
    return low.parts.length >= mostParts
      ? { ...low, us: low.us + us, unknown: low.unknown ?? at }
      : { ...low, us: low.us + us, parts: [...low.parts, part] };
  });
}

function isSamePlace(a: HoldPart, b: HoldPart): boolean {
  return a.span.file === b.span.file && a.span.start === b.span.start;
}

function addUnknown(state: LowPins, at: At): LowPins {
  return state.map((low) => (low.unknown === undefined ? { ...low, unknown: at } : low));
}

/** Where two paths meet, the shorter hold counts; a pin that is low on one of them alone does not. */
function joinLow(a: LowPins, b: LowPins): LowPins {
  if (a === b) return a;
  const joined: LowPin[] = [];
  for (const low of a) {
    const other = b.find(({ pin }) => pin === low.pin);
    if (other !== undefined) joined.push(shorter(low, other));
  }
  return joined;
}

function shorter(a: LowPin, b: LowPin): LowPin {
  if (a.unknown === undefined && b.unknown !== undefined) return a;
  if (a.unknown !== undefined && b.unknown === undefined) return b;
  return a.us <= b.us ? a : b;
}

/** The turns of a loop that were not walked take as long as the last one that was. */
function behindLoop(loop: LoopEvent, before: LowPins, after: LowPins): LowPins {
  if (after.length === 0) return after;
  const walked = loop.passes.length;
  if (loop.form === "counted" && loop.turns !== undefined && !loop.idle) {
    const more = loop.turns - walked;
    return more > 0 && walked > 0 ? after.map((low) => repeated(low, before, more / walked)) : after;
  }
  const us = timeWaited(loop);
  if (us === undefined) return addUnknown(after, loop.at);
  return addPart(after, { ...us, times: 1 }, loop.at);
}

function repeated(low: LowPin, before: LowPins, more: number): LowPin {
  const start = before.find(({ pin }) => pin === low.pin);
  if (start === undefined || start.parts.length > low.parts.length) return low;
  const parts = low.parts.map((part, index) => {
    const held = start.parts[index]?.times ?? 0;
    return { ...part, times: held + (part.times - held) * (1 + more) };
  });
  return { ...low, parts, us: start.us + (low.us - start.us) * (1 + more) };
}

/** How long a loop runs that waits for nothing but a time: `while (micros() - since < 100)`. */
function timeWaited(loop: LoopEvent): Omit<HoldPart, "times"> | undefined {
  const [trace] = loop.waitsFor;
  if (
    loop.form !== "waiting" ||
    loop.waitsFor.length !== 1 ||
    trace?.kind !== "time" ||
    trace.unit === "tick"
  ) {
    return undefined;
  }
  for (const event of inOrder(loop.passes[0] ?? [])) {
    const limit = timeLimit(event);
    if (limit === undefined) continue;
    const unitUs = trace.unit === "ms" ? 1000 : 1;
    const at = limit.from?.at ?? loop.at;
    return {
      us: limit.value * unitUs,
      unitUs,
      turnsFrom: [],
      expression: limit.from,
      span: visibleRange(at.first, at.last),
    };
  }
  return undefined;
}

function timeLimit(
  event: Event,
): { readonly value: number; readonly from: HoldPart["expression"] } | undefined {
  if (event.kind !== "time-test") return undefined;
  const value = numberOf(event.limit);
  return value === undefined ? undefined : { value, from: event.limit.from };
}
