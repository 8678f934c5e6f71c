import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** CPU cycles that one bit lasts; not rounded. */
export function bitCycles(clockHz: number, baud: number): number {
  return clockHz / baud;
}

/** Dividers of timer 0 by clock select 1 to 5. */
const PRESCALERS: readonly number[] = [1, 8, 64, 256, 1024];

const registerRange = { min: 0, max: 255 };

function prescaler(sampling: string): number {
  return Number(sampling.slice(1));
}

/** One compare match of timer 0 per bit, for ATtiny25/45/85, which have no USART. The value is OCR0A. */
export const avrTimer0Compare = baudGenerator({
  id: "avr-timer0-compare",
  title: "AVR timer 0, clear on compare match",
  families: ["avr"],
  formula: "f / (prescaler (OCR0A + 1))",
  register: "OCR0A",
  samplings: PRESCALERS.map((divider) => ({ id: `/${divider}`, samplesPerBit: 1, registerRange })),
  sources: [{ document: "attiny85", place: "Timer/Counter0, clear timer on compare match" }],
  confidence: "memory",
  baudOf: (clockHz, { sampling, value }) => clockHz / (prescaler(sampling) * (value + 1)),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(clockHz, prescaler(id) * baud) - 1,
  }),
  registersOf: ({ sampling, value }) => [
    { name: "OCR0A", value },
    { name: "CS0", value: PRESCALERS.indexOf(prescaler(sampling)) + 1 },
  ],
});
