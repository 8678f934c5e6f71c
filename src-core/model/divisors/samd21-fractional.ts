import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

const SAMPLES: Readonly<Record<string, number>> = { "SAMPR=1": 16, "SAMPR=3": 8 };

/** The value counts eighths: 13 bits of BAUD, at least 1, and three bits of FP. */
const STEPS = 8;
const registerRange = { min: STEPS, max: 8191 * STEPS + 7 };

/** SERCOM USART of SAM D21, asynchronous fractional mode. */
export const samd21Fractional = baudGenerator({
  id: "samd21-fractional",
  title: "SAM D21 SERCOM, fractional mode",
  families: ["samd21"],
  formula: "f / (S (BAUD + FP / 8)), S = 16 or 8",
  register: "8 BAUD + FP",
  samplings: [
    { id: "SAMPR=1", samplesPerBit: 16, registerRange },
    { id: "SAMPR=3", samplesPerBit: 8, registerRange },
  ],
  sources: [{ document: "samd21", place: "Table 25-2" }],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) => (clockHz * STEPS) / ((SAMPLES[sampling] ?? Number.NaN) * value),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(STEPS * clockHz, (SAMPLES[id] ?? Number.NaN) * baud),
  }),
  registersOf: ({ sampling, value }) => [
    { name: "BAUD", value: Math.floor(value / STEPS) },
    { name: "FP", value: value % STEPS },
    { name: "SAMPR", value: Number(sampling.slice("SAMPR=".length)) },
  ],
});
