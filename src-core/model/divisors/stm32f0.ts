import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/**
 * USART of STM32F0 and later. With OVER8=1, BRR[2:0] holds USARTDIV[3:0] shifted right by one, so that only even
 * USARTDIV can be had. The value is USARTDIV.
 */
export const stm32f0 = baudGenerator({
  id: "stm32f0",
  title: "STM32F0 USART",
  families: ["stm32f0"],
  formula: "f / USARTDIV with OVER8=0, 2 f / USARTDIV with OVER8=1",
  register: "USARTDIV",
  samplings: [
    { id: "OVER8=0", samplesPerBit: 16, registerRange: { min: 16, max: 65_535 } },
    { id: "OVER8=1", samplesPerBit: 8, registerRange: { min: 16, max: 65_535 } },
  ],
  sources: [{ document: "rm0091", place: "Table 85" }],
  confidence: "read",
  baudOf: (clockHz, { sampling, value }) =>
    sampling === "OVER8=1" ? (2 * clockHz) / (value - (value % 2)) : clockHz / value,
  valueFor: (clockHz, baud, { id }) => ({
    sampling: id,
    value: roundHalfUp(clockHz, baud) * (id === "OVER8=1" ? 2 : 1),
  }),
  registersOf: ({ sampling, value }) =>
    sampling === "OVER8=1"
      ? [
          { name: "BRR", value: (value & 0xfff0) | ((value & 0x0f) >> 1) },
          { name: "OVER8", value: 1 },
        ]
      : [
          { name: "BRR", value },
          { name: "OVER8", value: 0 },
        ],
});
