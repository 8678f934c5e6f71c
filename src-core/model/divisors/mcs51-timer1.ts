import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** Clock periods of a 12-clock core per count of the timer, times 32. */
const FACTOR = 384;

const registerRange = { min: 0, max: 255 };

function smod(sampling: string): 0 | 1 {
  return sampling === "SMOD=1" ? 1 : 0;
}

/** 8051 UART clocked by timer 1 in mode 2 (auto-reload) on a 12-clock core. The value is TH1. */
export const mcs51Timer1 = baudGenerator({
  id: "mcs51-timer1",
  title: "8051 timer 1, mode 2",
  families: ["mcs51"],
  formula: "2^SMOD f / (384 (256 - TH1))",
  register: "TH1",
  samplings: [
    { id: "SMOD=0", samplesPerBit: 16, registerRange },
    { id: "SMOD=1", samplesPerBit: 16, registerRange },
  ],
  sources: [{ document: "manual8051", place: "2.13.4" }],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) => (2 ** smod(sampling) * clockHz) / (FACTOR * (256 - value)),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: 256 - roundHalfUp(2 ** smod(id) * clockHz, FACTOR * baud),
  }),
  registersOf: ({ sampling, value }) => [
    { name: "TH1", value },
    { name: "SMOD", value: smod(sampling) },
  ],
});
