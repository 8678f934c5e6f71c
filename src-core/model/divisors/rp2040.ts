import { baudGenerator, roundHalfUp } from "./baud-generator.ts";

/** The value counts 64ths: 16 bits of IBRD, at least 1, and six of FBRD, which must be 0 with IBRD 65535. */
const STEPS = 64;

/** UART (PL011) of RP2040. `clockHz` is clk_peri. */
export const rp2040 = baudGenerator({
  id: "rp2040",
  title: "RP2040 UART",
  families: ["rp2040"],
  formula: "f / (16 (IBRD + FBRD / 64))",
  register: "64 IBRD + FBRD",
  samplings: [{ id: "PL011", samplesPerBit: 16, registerRange: { min: STEPS, max: 65_535 * STEPS } }],
  sources: [
    { document: "rp2040", place: "section 4.3.3.2.1, p. 444" },
    { document: "rm0352", place: "section 12.6.5" },
  ],
  confidence: "read",
  baudOf: (clockHz, { value }) => (clockHz * STEPS) / (16 * value),
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: roundHalfUp(clockHz * STEPS, 16 * baud) }),
  registersOf: ({ value }) => [
    { name: "UARTIBRD", value: Math.floor(value / STEPS) },
    { name: "UARTFBRD", value: value % STEPS },
  ],
});
