import type { DataModel } from "../../reader/types/types.ts";
import type { OutsideBody } from "../outcome.ts";
import { fixedDigits } from "./decimal-digits.ts";
import { ascii, writeText } from "./target-text.ts";
import { numberAt, type Subject, unsigned } from "./values.ts";

/** avr-libc's itoa and its kin: base 2 to 36, small letters; an empty text for any other base. */
export function integerText(value: number, base: number): string {
  return base < 2 || base > 36 ? "" : value.toString(base);
}

/** A minus sign stands in base 10 alone: elsewhere the number counts as unsigned, as avr-libc's manual has it. */
export function signedText(value: number, base: number, bits: number): string {
  return base === 10 ? integerText(value, base) : integerText(unsigned(value, bits), base);
}

function intoText(textOf: (value: number, base: number, model: DataModel) => string): OutsideBody {
  return (parameters, memory, { model }) => {
    const to = numberAt(parameters, 1);
    writeText(memory, to, ascii(textOf(numberAt(parameters, 0), numberAt(parameters, 2), model)));
    return to;
  };
}

/** avr-libc's dtostrf: `width` at least, negative to fill up on the right. */
export function doubleText(value: number, width: number, decimals: number, model: DataModel): string {
  const sign = value < 0 || Object.is(value, -0) ? "-" : "";
  const magnitude = Math.abs(value);
  const text = Number.isNaN(value)
    ? "NAN"
    : Number.isFinite(value)
      ? sign + fixedDigits(magnitude, decimals, model)
      : `${sign}INF`;
  return width < 0 ? text.padEnd(-width) : text.padStart(width);
}

/** Texts out of numbers: avr-libc's additions to stdlib.h. */
export const numberText: Subject = {
  itoa: intoText((value, base, model) => signedText(value, base, model.int)),
  utoa: intoText(integerText),
  ltoa: intoText((value, base) => signedText(value, base, 32)),
  ultoa: intoText(integerText),
  dtostrf(parameters, memory, { model }) {
    const [value, width, decimals, to] = [0, 1, 2, 3].map((index) => numberAt(parameters, index));
    writeText(memory, to ?? 0, ascii(doubleText(value ?? 0, width ?? 0, decimals ?? 0, model)));
    return to;
  },
};
