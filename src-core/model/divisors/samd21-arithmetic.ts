import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** CTRLA.SAMPR and the samples it stands for. */
const SAMPLES: Readonly<Record<string, number>> = { "SAMPR=0": 16, "SAMPR=2": 8, "SAMPR=4": 3 };

const STEPS = 65_536;
const registerRange = { min: 0, max: STEPS - 1 };

/** SERCOM USART of SAM D21, asynchronous arithmetic mode: coarse at low rates (0.82 % slow at 48 MHz and 1200). */
export const samd21Arithmetic = baudGenerator({
  id: "samd21-arithmetic",
  title: "SAM D21 SERCOM, arithmetic mode",
  families: ["samd21"],
  formula: "(f / S) (1 - BAUD / 65536), S = 16, 8 or 3",
  register: "BAUD",
  samplings: [
    { id: "SAMPR=0", samplesPerBit: 16, registerRange },
    { id: "SAMPR=2", samplesPerBit: 8, registerRange },
    { id: "SAMPR=4", samplesPerBit: 3, registerRange },
  ],
  sources: [{ document: "samd21", place: "Table 25-2" }],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) =>
    (clockHz * (STEPS - value)) / ((SAMPLES[sampling] ?? Number.NaN) * STEPS),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(STEPS * (clockHz - (SAMPLES[id] ?? Number.NaN) * baud), clockHz),
  }),
  registersOf: ({ sampling, value }) => [
    { name: "BAUD", value },
    { name: "SAMPR", value: Number(sampling.slice("SAMPR=".length)) },
  ],
});
