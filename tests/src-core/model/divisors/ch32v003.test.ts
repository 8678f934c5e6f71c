import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const ch32 = generator("ch32v003");

describe("CH32V003 USART", () => {
  test.each([
    [115_200, 39.0625, 26.0625],
    [921_600, 4.875, 3.25],
  ])(
    "reference manual V1.3, 12.3, %s baud: the printed %s belongs to 72 MHz; at 48 MHz it is %s",
    (baud, at72, at48) => {
      expect(nearest(ch32, 72e6, baud).value / 16).toBe(at72);
      expect(nearest(ch32, 48e6, baud).value / 16).toBe(at48);
    },
  );

  test("the manual's 921600 baud: 923076 baud, 0.16 % off", () => {
    const { actualBaud, errorPercent } = nearest(ch32, 72e6, 921_600);
    expect(Math.floor(actualBaud)).toBe(923_076);
    expect(printed(errorPercent, 2)).toBe(0.16);
  });

  /** BRR = f / B, worked out by hand, for 1200, 2400, 4800, 9600, 115200 baud. */
  test.each([
    [8e6, [0x1a0b, 0x0d05, 0x0683, 0x0341, 0x0045]],
    [24e6, [0x4e20, 0x2710, 0x1388, 0x09c4, 0x00d0]],
    [48e6, [0x9c40, 0x4e20, 0x2710, 0x1388, 0x01a1]],
  ] as const)("%s Hz", (hz, expected) => {
    expect([1200, 2400, 4800, 9600, 115_200].map((baud) => nearest(ch32, hz, baud).value)).toEqual(expected);
  });
});
