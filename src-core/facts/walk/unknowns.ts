import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { Type } from "../../reader/types/types.ts";
import type { Bits, CopiedBits, IntegerValue, Trace, UnknownValue, Value } from "./values.ts";

const noTraces: readonly Trace[] = [];

/** More are not worth keeping: they only tell what a loop waits for. */
const mostTraces = 4;

// Every value of a kind has the same properties in the same order, so that reading them stays fast.

export function integer(value: number, from: TypedExpression | undefined, entry = false): IntegerValue {
  return { kind: "integer", value, from, entry };
}

export function unknown(
  from: TypedExpression | undefined,
  traces: readonly Trace[] = noTraces,
): UnknownValue {
  return { kind: "unknown", from, known: 0, ones: 0, copied: undefined, traces, compared: undefined };
}

/** Something of this type: bits that the type cannot have are known to be 0. */
export function unknownOf(
  type: Type,
  from: TypedExpression | undefined,
  traces: readonly Trace[] = noTraces,
): UnknownValue {
  return unknownBits(bitsAbove(type), 0, from, traces, undefined);
}

/** The same value as another expression gives it. */
export function givenBy(value: Value, from: TypedExpression | undefined): Value {
  switch (value.kind) {
    case "integer":
      return integer(value.value, from, value.entry);
    case "floating":
      return { kind: "floating", value: value.value, from };
    case "address":
      return { kind: "address", place: value.place, from };
    case "function":
      return { kind: "function", function: value.function, from };
    case "unknown":
      return unknownBits(value.known, value.ones, from, value.traces, value.copied, value.compared);
  }
}

/** Mask of the low 32 bits that are 0 in every value of an unsigned type. */
export function bitsAbove(type: Type): number {
  const kept = integerTypeOf(type);
  if (kept === undefined || (kept.signed && kept.rank !== "bool")) return 0;
  if (kept.rank === "bool") return 0xfffffffe;
  return kept.bits >= 32 ? 0 : (-1 << kept.bits) >>> 0;
}

/** Of the low 32 bits those in `known` are known, and those in `ones` are 1. */
export function unknownBits(
  known: number,
  ones: number,
  from: TypedExpression | undefined,
  traces: readonly Trace[],
  copied: CopiedBits | undefined,
  compared: UnknownValue["compared"] = undefined,
): UnknownValue {
  return { kind: "unknown", from, known: known >>> 0, ones: ones >>> 0, copied, traces, compared };
}

const nothingKnown: Bits = { known: 0, ones: 0 };

/** What is known of the low 32 bits of any value. */
export function bitsOf(value: Value): Bits {
  switch (value.kind) {
    case "integer":
      return Number.isSafeInteger(value.value) && Math.abs(value.value) < 2 ** 32
        ? { known: 0xffffffff, ones: value.value >>> 0 }
        : nothingKnown;
    case "unknown":
      return value;
    case "floating":
    case "address":
    case "function":
      return nothingKnown;
  }
}

export function tracesOf(value: Value): readonly Trace[] {
  return value.kind === "unknown" ? value.traces : noTraces;
}

export function sameTrace(a: Trace, b: Trace): boolean {
  if (a === b) return true;
  switch (a.kind) {
    case "register":
      return b.kind === "register" && a.register === b.register && a.mask === b.mask;
    case "pin":
      return b.kind === "pin" && sameValue(a.pin, b.pin);
    case "interrupt-of":
      return b.kind === "interrupt-of" && sameValue(a.pin, b.pin);
    case "time":
      return b.kind === "time" && a.name === b.name;
    case "shared":
      return b.kind === "shared" && a.variable === b.variable && a.field === b.field;
    case "outside-call":
      return b.kind === "outside-call" && a.name === b.name;
    case "parameter":
      return b.kind === "parameter" && a.variable === b.variable;
  }
}

export function joinTraces(a: readonly Trace[], b: readonly Trace[]): readonly Trace[] {
  if (b.length === 0 || a === b) return a;
  if (a.length === 0) return b;
  let joined: Trace[] | undefined;
  for (const trace of b) {
    if (holds(a, trace)) continue;
    joined ??= [...a];
    joined.push(trace);
  }
  if (joined === undefined) return a;
  return joined.length > mostTraces ? joined.slice(0, mostTraces) : joined;
}

function holds(traces: readonly Trace[], trace: Trace): boolean {
  for (const held of traces) if (sameTrace(held, trace)) return true;
  return false;
}

/** Whether two values are known to be the same. */
export function sameValue(a: Value, b: Value): boolean {
  if (a === b) return true;
  switch (a.kind) {
    case "integer":
    case "floating":
      return (b.kind === "integer" || b.kind === "floating") && a.value === b.value;
    case "address":
      return b.kind === "address" && a.place === b.place;
    case "function":
      return b.kind === "function" && a.function === b.function;
    case "unknown":
      return false;
  }
}

/** What is known where either of two values may stand; `why` is what decides which. */
export function joinValues(a: Value, b: Value, why: readonly Trace[] = noTraces): Value {
  if (sameValue(a, b)) return a;
  const left = bitsOf(a);
  const right = bitsOf(b);
  const known = left.known & right.known & ~(left.ones ^ right.ones);
  const traces = joinTraces(joinTraces(tracesOf(a), tracesOf(b)), why);
  const from = a.from ?? b.from;
  if (a.kind === "unknown" && isSaid(a, known, from, traces)) return a;
  return unknownBits(known, left.ones & known, from, traces, undefined);
}

/** Whether the unknown value is already what is left of it, known bits and all, so that no other has to be made. */
function isSaid(
  value: UnknownValue,
  known: number,
  from: TypedExpression | undefined,
  traces: readonly Trace[],
): boolean {
  const { copied, compared } = value;
  if (copied !== undefined || compared !== undefined) return false;
  return value.known === known >>> 0 && value.traces === traces && value.from === from;
}

/** Whether a condition holds; undefined where that is not known. */
export function truthOf(value: Value): boolean | undefined {
  switch (value.kind) {
    case "integer":
    case "floating":
      return value.value !== 0;
    case "address":
    case "function":
      return true;
    case "unknown":
      return value.ones !== 0 ? true : undefined;
  }
}
