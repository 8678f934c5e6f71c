import { randomBelow } from "./random.ts";
import { numberAt, type Subject } from "./values.ts";

/** 32-bit `long` arithmetic that wraps round as on the target. */
function mapRange(value: number, [fromLow, fromHigh, toLow, toHigh]: readonly number[]): number {
  const span = ((fromHigh ?? 0) - (fromLow ?? 0)) | 0;
  const product = Math.imul((value - (fromLow ?? 0)) | 0, ((toHigh ?? 0) - (toLow ?? 0)) | 0);
  // Division by zero as avr-gcc's library does it: all ones for either sign of a positive dividend.
  const quotient = span === 0 ? (product < 0 ? 1 : -1) : Math.trunc(product / span);
  return (quotient + (toLow ?? 0)) | 0;
}

/** The sketch core's functions that touch no hardware, as its language reference describes them. */
export const sketchFunctions: Subject = {
  random: randomBelow,
  map: (parameters) =>
    mapRange(
      numberAt(parameters, 0),
      [1, 2, 3, 4].map((index) => numberAt(parameters, index)),
    ),
  makeWord: (parameters) =>
    parameters.length < 2
      ? numberAt(parameters, 0)
      : (numberAt(parameters, 0) << 8) | numberAt(parameters, 1),
};
