import type { DataModel } from "../../reader/types/types.ts";
import { ascii } from "./target-text.ts";
import { asDouble } from "./values.ts";

/** An integer with capital digits; bases below 2 count as 10. A minus sign stands in base 10 alone. */
export function printedInteger(value: number, base: number): number[] {
  const radix = base & 0xff;
  if (radix === 10 && value < 0) return ascii(value.toString(10));
  return ascii(digitsIn(value >>> 0, radix < 2 ? 10 : radix));
}

/** Digits beyond Z are the characters that follow it. */
function digitsIn(value: number, base: number): string {
  let text = "";
  let left = value;
  do {
    const digit = left % base;
    text = String.fromCharCode(digit < 10 ? 0x30 + digit : 0x37 + digit) + text;
    left = Math.floor(left / base);
  } while (left > 0);
  return text;
}

/** Beyond it the whole part fits no `unsigned long`, and `ovf` is printed. */
const MOST = 4294967040;

/** A floating number with a point: half a last digit is added first, the rest cut off, all in the target's `double`. */
export function printedDouble(value: number, decimals: number, model: DataModel): number[] {
  if (Number.isNaN(value)) return ascii("nan");
  if (!Number.isFinite(value)) return ascii("inf");
  if (Math.abs(value) > MOST) return ascii("ovf");
  const digits = decimals & 0xff;
  let rounding = 0.5;
  for (let digit = 0; digit < digits; digit += 1) rounding = asDouble(rounding / 10, model);
  const rounded = asDouble(Math.abs(value) + rounding, model);
  const whole = Math.trunc(rounded);
  let rest = asDouble(rounded - whole, model);
  let text = `${value < 0 ? "-" : ""}${whole}${digits > 0 ? "." : ""}`;
  for (let digit = 0; digit < digits; digit += 1) {
    rest = asDouble(rest * 10, model);
    const next = Math.trunc(rest);
    text += String(next);
    rest = asDouble(rest - next, model);
  }
  return ascii(text);
}
