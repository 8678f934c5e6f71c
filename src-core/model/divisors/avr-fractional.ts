import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

const SAMPLES: Readonly<Record<string, number>> = { NORMAL: 16, CLK2X: 8 };

/** BAUD counts 64ths of a divisor: ten integer bits of at least 1, six bits of fraction. */
const STEPS = 64;
const registerRange = { min: STEPS, max: 65_535 };

/** USART of the AVR 0 and 1 series and AVR Dx. `clockHz` is the peripheral clock. */
export const avrFractional = baudGenerator({
  id: "avr-fractional",
  title: "AVR USART with fractional BAUD",
  families: ["avr-dx"],
  formula: "64 f / (16 BAUD) with RXMODE NORMAL, 64 f / (8 BAUD) with CLK2X",
  register: "BAUD",
  samplings: [
    { id: "NORMAL", samplesPerBit: 16, registerRange },
    { id: "CLK2X", samplesPerBit: 8, registerRange },
  ],
  sources: [{ document: "avr0SeriesUsart", place: "equations for the baud rate register" }],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) => (STEPS * clockHz) / ((SAMPLES[sampling] ?? Number.NaN) * value),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(STEPS * clockHz, (SAMPLES[id] ?? Number.NaN) * baud),
  }),
  registersOf: ({ sampling, value }) => [
    { name: "BAUD", value },
    { name: "RXMODE", value: sampling === "CLK2X" ? 1 : 0 },
  ],
});
