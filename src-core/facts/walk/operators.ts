import { opposite } from "../../reader/typed/comparisons.ts";
import type { ArithmeticOperator, ComparisonOperator, TypedExpression } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { IntegerType, Type } from "../../reader/types/types.ts";
import { partial } from "./bit-operators.ts";
import { integerArithmetic, wrap } from "./integers.ts";
import {
  bitsOf,
  integer,
  joinTraces,
  tracesOf,
  truthOf,
  unknown,
  unknownBits,
  unknownOf,
} from "./unknowns.ts";
import { numberOf, type UnknownValue, type Value } from "./values.ts";

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
    if (value !== undefined) return kept ? integer(value, from) : { kind: "floating", value, from };
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

const zero: Value = integer(0, undefined);

/** `!value`: 1, 0, or one of both. */
export function not(value: Value, from: TypedExpression | undefined): Value {
  const truth = truthOf(value);
  if (truth !== undefined) return integer(truth ? 0 : 1, from);
  const compared = turned(value) ?? { operator: "==", left: value, right: zero };
  return unknownBits(0xfffffffe, 0, from, tracesOf(value), undefined, compared);
}

/** The comparison that holds where that of `value` does not. */
function turned(value: Value): UnknownValue["compared"] {
  const compared = value.kind === "unknown" ? value.compared : undefined;
  if (compared === undefined) return undefined;
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
  const traces = joinTraces(tracesOf(left), tracesOf(right));
  return unknownBits(0xfffffffe, 0, from, traces, undefined, { operator, left, right });
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
    if (value.kind !== "unknown") return value;
    return unknownBits(0xfffffffe, 0, value.from, value.traces, undefined, value.compared);
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
  return unknownBits(known, ones, value.from, value.traces, value.copied, value.compared);
}
