import type { ArithmeticOperator, TypedExpression } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { IntegerType, Type } from "../../reader/types/types.ts";
import { wrap } from "./integers.ts";
import {
  bitsAbove,
  bitsOf,
  integer,
  joinTraces,
  tracesOf,
  unknown,
  unknownBits,
  unknownOf,
} from "./unknowns.ts";
import { type CopiedBits, numberOf, type Trace, type Value } from "./values.ts";

/** Operands that are not both known: bitwise operators and shifts still tell some of the bits. */
export function partial(
  operator: ArithmeticOperator,
  left: Value,
  right: Value,
  type: IntegerType,
  from: TypedExpression | undefined,
): Value {
  switch (operator) {
    case "&":
    case "|":
    case "^":
      return bitwise(operator, left, right, type, from);
    case "<<":
    case ">>":
      return shifted(operator, left, right, type, from);
    default:
      return unknownOf(type, from, joinTraces(tracesOf(left), tracesOf(right)));
  }
}

function bitwise(
  operator: "&" | "|" | "^",
  left: Value,
  right: Value,
  type: IntegerType,
  from: TypedExpression | undefined,
): Value {
  const [a, b] = [bitsOf(left), bitsOf(right)];
  const [aZeros, bZeros] = [a.known & ~a.ones, b.known & ~b.ones];
  let ones: number;
  let zeros: number;
  if (operator === "&") {
    ones = a.ones & b.ones;
    zeros = aZeros | bZeros;
  } else if (operator === "|") {
    ones = a.ones | b.ones;
    zeros = aZeros & bZeros;
  } else {
    ones = (a.ones & bZeros) | (aZeros & b.ones);
    zeros = (a.ones & b.ones) | (aZeros & bZeros);
  }
  const copied =
    copiedThrough(operator, left, b.ones, bZeros) ?? copiedThrough(operator, right, a.ones, aZeros);
  const traces =
    operator === "&"
      ? joinTraces(masked(left, ~bZeros), masked(right, ~aZeros))
      : joinTraces(tracesOf(left), tracesOf(right));
  return settle(ones, zeros, type, from, traces, copied);
}

/** The copied bits of one operand that the known bits of the other let through. */
function copiedThrough(
  operator: "&" | "|" | "^",
  value: Value,
  ones: number,
  zeros: number,
): CopiedBits | undefined {
  const copied = value.kind === "unknown" ? value.copied : undefined;
  if (copied === undefined) return undefined;
  const { register, same, flipped, shift } = copied;
  if (operator === "&") return { register, same: same & ones, flipped: flipped & ones, shift };
  if (operator === "|") return { register, same: same & zeros, flipped: flipped & zeros, shift };
  return {
    register,
    shift,
    same: (same & zeros) | (flipped & ones),
    flipped: (flipped & zeros) | (same & ones),
  };
}

/** Traces to a register that is looked at through a mask keep the bits that are left. */
function masked(value: Value, mask: number): readonly Trace[] {
  if (value.kind !== "unknown" || value.copied === undefined) return tracesOf(value);
  const { register } = value.copied;
  const seen = seenBits(value.copied, mask);
  return value.traces.map((trace) =>
    trace.kind === "register" && trace.register === register
      ? { ...trace, mask: (trace.mask & seen) >>> 0 }
      : trace,
  );
}

/** The bits of the register itself that a mask lets through. */
export function seenBits({ shift }: CopiedBits, mask: number): number {
  return (shift >= 0 ? mask << shift : mask >>> -shift) >>> 0;
}

function settle(
  ones: number,
  zeros: number,
  type: IntegerType,
  from: TypedExpression | undefined,
  traces: readonly Trace[],
  copied: CopiedBits | undefined,
): Value {
  const known = (ones | zeros | bitsAbove(type)) >>> 0;
  if (known === 0xffffffff && type.bits <= 32) {
    const value = wrap(ones >>> 0, type);
    if (value !== undefined) return integer(value, from);
  }
  return unknownBits(known, ones & ~bitsAbove(type), from, traces, copied);
}

function shifted(
  operator: "<<" | ">>",
  left: Value,
  right: Value,
  type: IntegerType,
  from: TypedExpression | undefined,
): Value {
  const traces = joinTraces(tracesOf(left), tracesOf(right));
  const by = numberOf(right);
  if (by === undefined || by < 0 || by > 31) return unknownOf(type, from, traces);
  const bits = bitsOf(left);
  const zeros = bits.known & ~bits.ones;
  const copied = shiftedCopy(left, operator === ">>" ? by : -by);
  if (operator === "<<") {
    const shiftedIn = by === 0 ? 0 : (1 << by) - 1;
    return settle((bits.ones << by) >>> 0, ((zeros << by) | shiftedIn) >>> 0, type, from, traces, copied);
  }
  const above = (type.bits >= 32 && !type.signed) || (zeros & 0x80000000) !== 0;
  const emptied = above && by > 0 ? (-1 << (32 - by)) >>> 0 : 0;
  return settle(bits.ones >>> by, (zeros >>> by) | emptied, type, from, traces, copied);
}

function shiftedCopy(value: Value, by: number): CopiedBits | undefined {
  const copied = value.kind === "unknown" ? value.copied : undefined;
  if (copied === undefined) return undefined;
  const move = (bits: number): number => (by >= 0 ? bits >>> by : bits << -by);
  return {
    register: copied.register,
    same: move(copied.same),
    flipped: move(copied.flipped),
    shift: copied.shift + by,
  };
}

export function complement(value: Value, type: Type, from: TypedExpression | undefined): Value {
  const kept = integerTypeOf(type);
  if (kept === undefined) return unknown(from, tracesOf(value));
  if (value.kind === "integer") {
    const flipped = wrap(-1 - value.value, kept);
    return flipped === undefined ? unknownOf(type, from) : integer(flipped, from);
  }
  const bits = bitsOf(value);
  const copied = value.kind === "unknown" ? value.copied : undefined;
  const turned = copied && { ...copied, same: copied.flipped, flipped: copied.same };
  return settle(bits.known & ~bits.ones, bits.ones, kept, from, tracesOf(value), turned);
}
