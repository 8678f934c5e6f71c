import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/**
 * USART of STM32F2 and F4. The value counts sixteenths of USARTDIV with OVER8=0 and eighths with OVER8=1, where BRR
 * has the fraction in bits 2 to 0 and bit 3 clear.
 */
export const stm32f4 = baudGenerator({
  id: "stm32f4",
  title: "STM32F4 USART",
  families: ["stm32f4"],
  formula: "f / (16 USARTDIV) with OVER8=0, f / (8 USARTDIV) with OVER8=1",
  register: "USARTDIV in steps of its fraction",
  samplings: [
    { id: "OVER8=0", samplesPerBit: 16, registerRange: { min: 16, max: 65_535 } },
    { id: "OVER8=1", samplesPerBit: 8, registerRange: { min: 8, max: 4095 * 8 + 7 } },
  ],
  sources: [
    { document: "rm0090", place: "Tables 134 to 139" },
    { document: "rm0390", place: "Tables 148 to 152" },
  ],
  confidence: "read",
  baudOf: (clockHz, { value }) => clockHz / value,
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: roundHalfUp(clockHz, baud) }),
  registersOf: ({ sampling, value }) =>
    sampling === "OVER8=1"
      ? [
          { name: "BRR", value: (Math.floor(value / 8) << 4) | (value % 8) },
          { name: "OVER8", value: 1 },
        ]
      : [
          { name: "BRR", value },
          { name: "OVER8", value: 0 },
        ],
});
