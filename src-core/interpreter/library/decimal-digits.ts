import type { DataModel } from "../../reader/types/types.ts";

/** Significant decimal digits that avr-libc's conversions of `float` give; zeros follow. From memory of its sources. */
const AVR_DIGITS = 8;

/** `ddd.ddd` with so many digits behind the point. `value` is finite and not negative. */
export function fixedDigits(value: number, decimals: number, model: DataModel): string {
  if (model.double !== 32) return wholeAndDecimals(value, decimals);
  const exponent = Number(value.toExponential(AVR_DIGITS - 1).split("e")[1]);
  const known = AVR_DIGITS - 1 - exponent;
  if (decimals <= known) return wholeAndDecimals(value, decimals);
  const text = known > 0 ? wholeAndDecimals(value, known) : leadingDigits(value, exponent);
  const fraction = text.split(".")[1] ?? "";
  return decimals === 0 ? text : `${text.split(".")[0]}.${fraction.padEnd(decimals, "0")}`;
}

function wholeAndDecimals(value: number, decimals: number): string {
  if (value < 1e21) return value.toFixed(Math.min(decimals, 100));
  return `${BigInt(value)}${decimals === 0 ? "" : `.${"0".repeat(decimals)}`}`;
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
