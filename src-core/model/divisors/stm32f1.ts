import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** USART of STM32F1: BRR counts sixteenths of the divisor. `clockHz` is PCLK2 for USART1, PCLK1 for the others. */
export const stm32f1 = baudGenerator({
  id: "stm32f1",
  title: "STM32F1 USART",
  families: ["stm32f1"],
  formula: "f / (16 USARTDIV), USARTDIV = BRR / 16",
  register: "BRR",
  samplings: [{ id: "OVER16", samplesPerBit: 16, registerRange: { min: 16, max: 65_535 } }],
  sources: [{ document: "rm0008", place: "Table 192" }],
  confidence: "read",
  baudOf: (clockHz, { value }) => clockHz / value,
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: roundHalfUp(clockHz, baud) }),
  registersOf: ({ value }) => [{ name: "BRR", value }],
});
