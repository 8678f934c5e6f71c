import type { DataModel } from "../../reader/types/types.ts";

/** Significant decimal digits that avr-libc's conversions of `float` give; zeros follow. From memory of its sources. */
const AVR_DIGITS = 8;

/** Digits beyond the last one by which a tie is told from what is only near one. */
const BEYOND = 30;
const MOST_DIGITS = 100;

/** `ddd.ddd` with so many digits behind the point. `value` is finite and not negative. */
export function fixedDigits(value: number, decimals: number, model: DataModel): string {
  if (model.double !== 32) return nearestFixed(value, decimals);
  const exponent = Number(value.toExponential(AVR_DIGITS - 1).split("e")[1]);
  const known = AVR_DIGITS - 1 - exponent;
  if (decimals <= known) return value.toFixed(Math.min(decimals, MOST_DIGITS));
  const text = known > 0 ? value.toFixed(Math.min(known, MOST_DIGITS)) : leadingDigits(value, exponent);
  const [whole, fraction = ""] = text.split(".");
  return decimals === 0 ? text : `${whole}.${fraction.padEnd(decimals, "0")}`;
}

/** An integer of more digits than are known: zeros stand for the rest. */
function leadingDigits(value: number, exponent: number): string {
  const digits =
    value
      .toExponential(AVR_DIGITS - 1)
      .split("e")[0]
      ?.replace(".", "") ?? "";
  return digits.padEnd(exponent + 1, "0");
}

/** The nearest decimal, of two equally near ones that with the even digit: IEEE 754, 4.3.1. */
export function nearestFixed(value: number, decimals: number): string {
  // Such a number is an integer.
  if (value >= 1e21) return `${BigInt(value)}${decimals === 0 ? "" : `.${"0".repeat(decimals)}`}`;
  const digits = Math.min(decimals, MOST_DIGITS);
  const exact = value.toFixed(Math.min(digits + BEYOND, MOST_DIGITS));
  return evenOfTie(exact, digits) ?? value.toFixed(digits);
}

/** The same as a digit, a fraction and a power of ten. */
export function nearestExponential(value: number, decimals: number): { mantissa: string; exponent: number } {
  const digits = Math.min(decimals, MOST_DIGITS);
  const exact = value.toExponential(Math.min(digits + BEYOND, MOST_DIGITS));
  const [tied = "", tiedExponent] = exact.split("e");
  const even = evenOfTie(tied, digits);
  if (even !== undefined) return { mantissa: even, exponent: Number(tiedExponent) };
  const [mantissa = "", exponent] = value.toExponential(digits).split("e");
  return { mantissa, exponent: Number(exponent) };
}

/** What is left of a number halfway between two decimals, where the lower one is even; undefined for all others. */
function evenOfTie(exact: string, decimals: number): string | undefined {
  const [whole = "", fraction = ""] = exact.split(".");
  if (!/^50*$/.test(fraction.slice(decimals))) return undefined;
  const kept = decimals === 0 ? whole : `${whole}.${fraction.slice(0, decimals)}`;
  return /[02468]$/.test(kept) ? kept : undefined;
}
