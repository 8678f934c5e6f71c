import type { ArithmeticOperator, ComparisonOperator, TypedExpression } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { IntegerType, Type } from "../../reader/types/types.ts";
import { integerArithmetic, wrap } from "./integers.ts";
import {
  bitsAbove,
  bitsOf,
  integer,
  joinTraces,
  tracesOf,
  truthOf,
  unknown,
  unknownBits,
  unknownOf,
} from "./unknowns.ts";
import { type CopiedBits, numberOf, type Trace, type UnknownValue, type Value } from "./values.ts";

/** `left operator right` in the type of the node. */
export function arithmetic(
  operator: ArithmeticOperator,
  left: Value,
  right: Value,
  type: Type,
  from: TypedExpression | undefined,
): Value {
  const [a, b] = [numberOf(left), numberOf(right)];
  const kept = integerTypeOf(type);
  if (a !== undefined && b !== undefined) {
    const value = kept ? integerArithmetic(operator, a, b, kept) : floatingArithmetic(operator, a, b);
    if (value !== undefined) return { kind: kept ? "integer" : "floating", value, from };
  }
  if (kept === undefined) return unknown(from, joinTraces(tracesOf(left), tracesOf(right)));
  return partial(operator, left, right, kept, from);
}

function floatingArithmetic(operator: ArithmeticOperator, a: number, b: number): number | undefined {
  switch (operator) {
    case "+":
      return a + b;
    case "-":
      return a - b;
    case "*":
      return a * b;
    case "/":
      return b === 0 ? undefined : a / b;
    default:
      return undefined;
  }
}

/** Operands that are not both known: bitwise operators and shifts still tell some of the bits. */
function partial(
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
  return unknownBits({ known, ones: ones & ~bitsAbove(type) }, from, traces, copied);
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

/** `!value`: 1, 0, or one of both. */
export function not(value: Value, from: TypedExpression | undefined): Value {
  const truth = truthOf(value);
  if (truth !== undefined) return integer(truth ? 0 : 1, from);
  return {
    ...unknownBits({ known: 0xfffffffe, ones: 0 }, from, tracesOf(value), undefined),
    compared: turned(value) ?? { operator: "==", left: value, right: integer(0, undefined) },
  };
}

/** The comparison that holds where that of `value` does not. */
function turned(value: Value): UnknownValue["compared"] {
  const compared = value.kind === "unknown" ? value.compared : undefined;
  if (compared === undefined) return undefined;
  const opposite = { "<": ">=", ">": "<=", "<=": ">", ">=": "<", "==": "!=", "!=": "==" } as const;
  return { ...compared, operator: opposite[compared.operator] };
}

export function compare(
  operator: ComparisonOperator,
  left: Value,
  right: Value,
  from: TypedExpression | undefined,
): Value {
  const [a, b] = [numberOf(left), numberOf(right)];
  if (a !== undefined && b !== undefined) return integer(holds(operator, a, b) ? 1 : 0, from);
  if (operator === "==" || operator === "!=") {
    const equal = equality(left, right);
    if (equal !== undefined) return integer(equal === (operator === "==") ? 1 : 0, from);
  }
  return {
    kind: "unknown",
    from,
    known: 0xfffffffe,
    ones: 0,
    copied: undefined,
    traces: joinTraces(tracesOf(left), tracesOf(right)),
    compared: { operator, left, right },
  };
}

export function holds(operator: ComparisonOperator, a: number, b: number): boolean {
  switch (operator) {
    case "<":
      return a < b;
    case ">":
      return a > b;
    case "<=":
      return a <= b;
    case ">=":
      return a >= b;
    case "==":
      return a === b;
    case "!=":
      return a !== b;
  }
}

/** Whether two values that are no numbers are equal; undefined where that is not known. */
function equality(left: Value, right: Value): boolean | undefined {
  if (left.kind === "address") {
    if (right.kind === "address") return left.place === right.place;
    return right.kind === "integer" && right.value === 0 ? false : undefined;
  }
  if (right.kind === "address") return left.kind === "integer" && left.value === 0 ? false : undefined;
  const [a, b] = [bitsOf(left), bitsOf(right)];
  return (a.known & b.known & (a.ones ^ b.ones)) !== 0 ? false : undefined;
}

/** A scalar value as another scalar type has it. */
export function converted(value: Value, type: Type): Value {
  if (type.kind === "floating") {
    const number = numberOf(value);
    if (number === undefined) return unknown(value.from, tracesOf(value));
    return { kind: "floating", value: type.bits === 32 ? Math.fround(number) : number, from: value.from };
  }
  const kept = integerTypeOf(type);
  if (kept === undefined) return value;
  if (kept.rank === "bool") {
    const truth = truthOf(value);
    if (truth !== undefined) return integer(truth ? 1 : 0, value.from);
    return value.kind === "unknown" ? { ...value, known: 0xfffffffe, ones: 0, copied: undefined } : value;
  }
  const number = numberOf(value);
  if (number !== undefined) {
    const wrapped = wrap(Math.trunc(number), kept);
    if (wrapped === number && value.kind === "integer") return value;
    return wrapped === undefined ? unknownOf(type, value.from) : integer(wrapped, value.from);
  }
  if (value.kind !== "unknown") return value;
  return narrowed(value, kept);
}

function narrowed(value: UnknownValue, type: IntegerType): UnknownValue {
  if (type.bits >= 32) return value;
  const inside = 2 ** type.bits - 1;
  const sign = 2 ** (type.bits - 1);
  let known = value.known & inside;
  let ones = value.ones & inside;
  if (!type.signed) known |= ~inside;
  else if ((known & sign) !== 0) {
    known |= ~inside;
    if ((ones & sign) !== 0) ones |= ~inside;
  }
  if (known >>> 0 === value.known && ones >>> 0 === value.ones) return value;
  return { ...value, known: known >>> 0, ones: ones >>> 0 };
}
