import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

const SAMPLES: Readonly<Record<string, number>> = { "U2X=0": 16, "U2X=1": 8 };

/** USART of ATmega and ATtiny with UBRR, 12 bits. */
export const avrClassic = baudGenerator({
  id: "avr-classic",
  title: "AVR USART",
  families: ["avr"],
  formula: "f / (16 (UBRR + 1)) with U2X=0, f / (8 (UBRR + 1)) with U2X=1",
  register: "UBRR",
  samplings: [
    { id: "U2X=0", samplesPerBit: 16, registerRange: { min: 0, max: 4095 } },
    { id: "U2X=1", samplesPerBit: 8, registerRange: { min: 0, max: 4095 } },
  ],
  sources: [
    { document: "atmega328Family", place: "Table 20-1" },
    { document: "atmega48", place: "Table 20-1" },
    { document: "attiny2313a", place: "p. 141" },
  ],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) => clockHz / ((SAMPLES[sampling] ?? Number.NaN) * (value + 1)),
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(clockHz, (SAMPLES[id] ?? Number.NaN) * baud) - 1,
  }),
  registersOf: ({ sampling, value }) => [
    { name: "UBRR", value },
    { name: "U2X", value: sampling === "U2X=1" ? 1 : 0 },
  ],
});
