import type { FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { Event } from "./events.ts";
import type { Machine } from "./machine.ts";
import type { Changes, Recording } from "./memory.ts";
import type { Place } from "./places.ts";
import { bitsOf, joinTraces, sameTrace } from "./unknowns.ts";
import type { Trace, Value } from "./values.ts";

/**
 * Functions that send a bit or wait for a byte are called dozens of times, and mostly find the world as they
 * found it the last time. Such a call is not walked again: what it did then is taken over. Its events then stand
 * in several calls.
 */
export interface RepeatableCall {
  readonly arguments: readonly Value[];
  readonly object: Place | undefined;
  /** What it depends on besides. */
  readonly found: Recording["found"];
  /** What it leaves changed; undefined where it does not return. */
  readonly changes: Changes | undefined;
  readonly events: readonly Event[];
  readonly result: Value | undefined;
  /** What decided which of its returns was taken. */
  readonly traces: readonly Trace[];
  /** Number of events inside, those of inner calls included. */
  readonly size: number;
}

interface Given {
  readonly arguments: readonly Value[];
  readonly object: Place | undefined;
}

type Done = Pick<RepeatableCall, "events" | "result">;

/** Calls of one function that are remembered. */
const mostCalls = 8;
/** A call that depends on more places than this will hardly find them all the same again. */
const mostPlaces = 120;

/** Does what an earlier call of the same function did; undefined where none was like this one. */
export function takeOver(machine: Machine, symbol: FunctionSymbol, given: Given): Done | undefined {
  const known = machine.repeats.get(symbol)?.find((call) => isLike(call, given));
  if (known === undefined) return undefined;
  for (const place of known.found.keys()) machine.memory.touch(place);
  machine.alive = known.changes !== undefined;
  if (known.changes !== undefined) {
    for (const [place, value] of known.changes) machine.memory.write(place, value);
  }
  machine.decided(known.traces);
  machine.happened += known.size;
  // Whoever goes through the events meets them again.
  machine.steps = Math.max(0, machine.steps - Math.floor(known.size / 4));
  return known;
}

/** Walks a call and remembers it, if it may come again. */
export function walkAndRemember(
  machine: Machine,
  symbol: FunctionSymbol,
  given: Given,
  walk: () => Value | undefined,
): Done {
  const { memory } = machine;
  const depth = machine.active.length + 1;
  const mark = memory.mark();
  const happenedBefore = machine.happened;
  const recording = memory.startRecording(depth);
  const decidedBefore = machine.frame?.traces ?? [];
  if (machine.frame !== undefined) machine.frame.traces = [];
  let result: Value | undefined;
  const events = machine.capture(() => {
    result = walk();
  });
  memory.stopRecording();
  const traces = machine.frame?.traces ?? [];
  if (machine.frame !== undefined) machine.frame.traces = joinTraces(decidedBefore, traces);
  const isWhole = machine.steps > 0 && !machine.isMuted && !recording.spoilt;
  if (isWhole && recording.found.size <= mostPlaces) {
    remember(machine, symbol, {
      arguments: given.arguments,
      object: given.object,
      found: recording.found,
      // The call's own objects end with it.
      changes: machine.alive ? memory.changesSince(mark, depth) : undefined,
      events,
      result,
      traces,
      size: machine.happened - happenedBefore,
    });
  }
  return { events, result };
}

function remember(machine: Machine, symbol: FunctionSymbol, call: RepeatableCall): void {
  const known = machine.repeats.get(symbol);
  if (known === undefined) machine.repeats.set(symbol, [call]);
  else if (known.length < mostCalls) known.push(call);
}

function isLike(call: RepeatableCall, given: Given): boolean {
  if (call.object !== given.object || call.arguments.length !== given.arguments.length) return false;
  for (let index = 0; index < call.arguments.length; index += 1)
    if (!alike(call.arguments[index], given.arguments[index])) return false;
  for (const [place, value] of call.found) {
    if (!alike(value, place.value) && !sameBits(place, value)) return false;
  }
  return true;
}

/** In a register only the bits count, not where they were written. */
function sameBits(place: Place, value: Value | undefined): boolean {
  if (place.root.kind !== "register" || value === undefined || place.value === undefined) return false;
  const held = bitsOf(value);
  const now = bitsOf(place.value);
  return held.known === now.known && held.ones === now.ones;
}

/** Whether a call cannot tell two values apart, where they were written included. */
function alike(a: Value | undefined, b: Value | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  switch (a.kind) {
    case "integer":
    case "floating":
      return b.kind === a.kind && b.value === a.value && b.from === a.from;
    case "address":
      return b.kind === "address" && b.place === a.place;
    case "function":
      return b.kind === "function" && b.function === a.function;
    case "unknown":
      return (
        b.kind === "unknown" &&
        b.known === a.known &&
        b.ones === a.ones &&
        sameCopy(a.copied, b.copied) &&
        b.compared === a.compared &&
        sameTraces(a.traces, b.traces)
      );
  }
}

type Copy = Extract<Value, { kind: "unknown" }>["copied"];

function sameCopy(a: Copy, b: Copy): boolean {
  if (a === b) return true;
  return (
    a !== undefined &&
    b !== undefined &&
    a.register === b.register &&
    a.same === b.same &&
    a.flipped === b.flipped &&
    a.shift === b.shift
  );
}

function sameTraces(a: readonly Trace[], b: readonly Trace[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  return a.every((trace, index) => {
    const other = b[index];
    return other !== undefined && sameTrace(trace, other);
  });
}
