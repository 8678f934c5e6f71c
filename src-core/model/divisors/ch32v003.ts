import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** USART of CH32V003: BRR counts sixteenths of the divisor (DIV_M in bits 15 to 4, DIV_F in 3 to 0). */
export const ch32v003 = baudGenerator({
  id: "ch32v003",
  title: "CH32V003 USART",
  families: ["ch32v003"],
  formula: "f / (16 (DIV_M + DIV_F / 16))",
  register: "BRR",
  samplings: [{ id: "OVER16", samplesPerBit: 16, registerRange: { min: 16, max: 65_535 } }],
  sources: [{ document: "ch32v003", place: "section 12.3" }],
  confidence: "read",
  baudOf: (clockHz, { value }) => clockHz / value,
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: roundHalfUp(clockHz, baud) }),
  registersOf: ({ value }) => [{ name: "BRR", value }],
});
