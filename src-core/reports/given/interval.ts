import type { ArithmeticOperator, ComparisonOperator } from "../../reader/typed/nodes.ts";
import { integerTypeOf } from "../../reader/types/conversions.ts";
import type { Type } from "../../reader/types/types.ts";

/** All whole numbers from one to another that a value may be. */
export interface Interval {
  readonly min: number;
  readonly max: number;
}

export const anything: Interval = { min: Number.NEGATIVE_INFINITY, max: Number.POSITIVE_INFINITY };
export const truth: Interval = { min: 0, max: 1 };

export function exactly(value: number): Interval {
  return { min: value, max: value };
}

/** What a type holds; anything for what is no whole number. */
export function ofType(type: Type): Interval {
  const integer = integerTypeOf(type);
  if (integer === undefined) return anything;
  if (integer.rank === "bool") return truth;
  const lowest = integer.signed ? -(2 ** (integer.bits - 1)) : 0;
  return { min: lowest, max: lowest + 2 ** integer.bits - 1 };
}

/** The value once a type holds it: as it is where it fits, else it may wrap to anything. */
export function heldBy(interval: Interval, type: Type): Interval {
  const all = ofType(type);
  return interval.min >= all.min && interval.max <= all.max ? interval : all;
}

export function hull(one: Interval, other: Interval): Interval {
  return { min: Math.min(one.min, other.min), max: Math.max(one.max, other.max) };
}

/** Undefined where the two have nothing in common. */
function common(one: Interval, other: Interval): Interval | undefined {
  const both = { min: Math.max(one.min, other.min), max: Math.min(one.max, other.max) };
  return both.min <= both.max ? both : undefined;
}

/** What is left of `value` where `value operator limit` holds; undefined where it cannot hold. */
export function where(value: Interval, operator: ComparisonOperator, limit: Interval): Interval | undefined {
  switch (operator) {
    case "<":
      return common(value, { ...anything, max: limit.max - 1 });
    case "<=":
      return common(value, { ...anything, max: limit.max });
    case ">":
      return common(value, { ...anything, min: limit.min + 1 });
    case ">=":
      return common(value, { ...anything, min: limit.min });
    case "==":
      return common(value, limit);
    case "!=":
      return value;
  }
}

/** As far as it takes limits apart; anything else may come out as anything. */
export function computed(operator: ArithmeticOperator, left: Interval, right: Interval): Interval {
  switch (operator) {
    case "+":
      return { min: left.min + right.min, max: left.max + right.max };
    case "-":
      return { min: left.min - right.max, max: left.max - right.min };
    case "*":
      return corners(left, right, (a, b) => (a === 0 || b === 0 ? 0 : a * b));
    case "/":
      return right.min > 0 ? corners(left, right, (a, b) => Math.trunc(a / b)) : anything;
    case "%":
      if (right.min <= 0) return anything;
      return { min: left.min >= 0 ? 0 : 1 - right.max, max: left.max <= 0 ? 0 : right.max - 1 };
    case "&": {
      const masks = [left, right].filter(({ min }) => min >= 0).map(({ max }) => max);
      return masks.length === 0 ? anything : { min: 0, max: Math.min(...masks) };
    }
    case ">>":
      return right.min >= 0 ? corners(left, right, (a, b) => Math.floor(a / 2 ** b)) : anything;
    case "<<":
    case "^":
    case "|":
      return anything;
  }
}

function corners(left: Interval, right: Interval, of: (a: number, b: number) => number): Interval {
  const all = [left.min, left.max].flatMap((a) => [of(a, right.min), of(a, right.max)]);
  return { min: Math.min(...all), max: Math.max(...all) };
}
