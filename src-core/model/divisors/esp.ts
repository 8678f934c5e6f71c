import { baudGenerator } from "./baud-generator.ts";

const SIXTEENTHS = 16;

/** Largest integer part with the 12-bit CLKDIV. */
const TWELVE_BITS = 4095;

const twentyBits = 2 ** 20 - 1;

/** ESP8266: whole divisor of 20 bits. The vendor's code rounds down. `clockHz` is the UART clock of 80 MHz. */
export const esp8266 = baudGenerator({
  id: "esp8266",
  title: "ESP8266 UART",
  families: ["esp8266"],
  formula: "f / CLKDIV",
  register: "CLKDIV",
  samplings: [{ id: "CLKDIV", samplesPerBit: undefined, registerRange: { min: 1, max: twentyBits } }],
  sources: [{ document: "esp8266Description", place: "UART_CLKDIV" }],
  confidence: "read",
  baudOf: (clockHz, { value }) => clockHz / value,
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: Math.floor(clockHz / baud) }),
  registersOf: ({ value }) => [{ name: "UART_CLKDIV", value }],
});

/** ESP32: the value counts sixteenths (20 bits and 4). The vendor's driver rounds down. `clockHz`: 80 MHz or 1 MHz. */
export const esp32 = baudGenerator({
  id: "esp32",
  title: "ESP32 UART",
  families: ["esp32"],
  formula: "f / (CLKDIV + FRAG / 16)",
  register: "16 CLKDIV + FRAG",
  samplings: [
    {
      id: "CLKDIV",
      samplesPerBit: undefined,
      registerRange: { min: SIXTEENTHS, max: twentyBits * SIXTEENTHS + 15 },
    },
  ],
  sources: [{ document: "espRegisters", place: "UART_CLKDIV_REG" }],
  confidence: "read",
  baudOf: (clockHz, { value }) => (clockHz * SIXTEENTHS) / value,
  valueFor: (clockHz, baud, { id }) => ({ sampling: id, value: Math.floor((clockHz * SIXTEENTHS) / baud) }),
  registersOf: ({ value }) => [
    { name: "CLKDIV", value: Math.floor(value / SIXTEENTHS) },
    { name: "FRAG", value: value % SIXTEENTHS },
  ],
});

/** ESP32-S3, C3 and C6: 12 bits of CLKDIV behind a divider of the clock, as the vendor's driver sets them. */
export const esp32Predivider = baudGenerator({
  id: "esp32-predivider",
  title: "ESP32-S3/C3 UART",
  families: ["esp32"],
  formula: "f / (SCLK_DIV (CLKDIV + FRAG / 16)), SCLK_DIV = f / (4095 baud) rounded up",
  register: "16 CLKDIV + FRAG",
  samplings: [
    {
      id: "CLKDIV",
      samplesPerBit: undefined,
      registerRange: { min: SIXTEENTHS, max: TWELVE_BITS * SIXTEENTHS + 15 },
    },
  ],
  sources: [{ document: "espRegisters", place: "UART_CLKDIV_REG and clock configuration" }],
  confidence: "read",
  baudOf: (clockHz, { value, predivider = 1 }) => (clockHz * SIXTEENTHS) / (predivider * value),
  valueFor: (clockHz, baud, { id }) => {
    const predivider = Math.ceil(clockHz / (TWELVE_BITS * baud));
    return { sampling: id, value: Math.floor((clockHz * SIXTEENTHS) / (baud * predivider)), predivider };
  },
  registersOf: ({ value, predivider = 1 }) => [
    { name: "SCLK_DIV", value: predivider },
    { name: "CLKDIV", value: Math.floor(value / SIXTEENTHS) },
    { name: "FRAG", value: value % SIXTEENTHS },
  ],
});
