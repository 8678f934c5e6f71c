import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const esp8266 = generator("esp8266");
const esp32 = generator("esp32");
const predivider = generator("esp32-predivider");
const bauds = [1200, 2400, 4800, 9600] as const;

describe("ESP UARTs: divisors as the vendor's drivers compute them, worked out by hand (no published table found)", () => {
  test("ESP8266, 80 MHz: clock / baud, rounded down", () => {
    expect(bauds.map((baud) => nearest(esp8266, 80e6, baud).value)).toEqual([66_666, 33_333, 16_666, 8333]);
  });

  test("ESP8266: the boot ROM's 74880 baud are 115200 with a 26 MHz crystal taken for 40 MHz", () => {
    expect((115_200 * 26) / 40).toBe(74_880);
    expect(printed(nearest(esp8266, 80e6, 74_880).errorPercent, 2)).toBe(0.04);
  });

  test("ESP32 at 115200 baud: 694 + 7/16 (the reset value of UART_CLKDIV_REG is 694), 115201 baud", () => {
    const { registers, actualBaud } = nearest(esp32, 80e6, 115_200);
    expect([registers.CLKDIV, registers.FRAG]).toEqual([694, 7]);
    expect(Math.round(actualBaud)).toBe(115_201);
  });

  test.each([
    [80e6, [66_666, 10], [33_333, 5], [16_666, 10], [8333, 5]],
    [1e6, [833, 5], [416, 10], [208, 5], [104, 2]],
  ] as const)("ESP32, %s Hz", (hz, ...cells) => {
    const found = bauds.map((baud) => {
      const { registers } = nearest(esp32, hz, baud);
      return [registers.CLKDIV, registers.FRAG];
    });
    expect(found).toEqual(cells);
  });

  test.each([
    [40e6, [9, 3703, 11], [5, 3333, 5], [3, 2777, 12], [2, 2083, 5]],
    [80e6, [17, 3921, 9], [9, 3703, 11], [5, 3333, 5], [3, 2777, 12]],
  ] as const)("ESP32-S3/C3, %s Hz: divider, CLKDIV, FRAG", (hz, ...cells) => {
    const found = bauds.map((baud) => {
      const { registers } = nearest(predivider, hz, baud);
      return [registers.SCLK_DIV, registers.CLKDIV, registers.FRAG];
    });
    expect(found).toEqual(cells);
  });
});
