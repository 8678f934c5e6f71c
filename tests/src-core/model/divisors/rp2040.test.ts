import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const rp2040 = generator("rp2040");

function registers(hz: number, baud: number): readonly (number | undefined)[] {
  const found = nearest(rp2040, hz, baud).registers;
  return [found.UARTIBRD, found.UARTFBRD];
}

describe("PL011: published divisors", () => {
  test.each([
    [1200, 0x180],
    [2400, 0xc0],
    [9600, 0x30],
    [115_200, 4],
  ])("RM0352 Table 121, 7.3728 MHz, %s baud: IBRD %s, no fraction", (baud, ibrd) => {
    expect(registers(7_372_800, baud)).toEqual([ibrd, 0]);
    expect(nearest(rp2040, 7_372_800, baud).errorPercent).toBe(0);
  });

  test("RM0352 Table 122, 4 MHz, 2400 baud: 0x68 + 0x0B/64", () => {
    expect(registers(4e6, 2400)).toEqual([0x68, 0x0b]);
  });

  test("RM0352 Table 122, 4 MHz, 115200 baud: 2 + 0x0B/64; it prints 115101 and 0.086 %, the divisor gives 115108 and 0.080 %", () => {
    const { actualBaud, errorPercent } = nearest(rp2040, 4e6, 115_200);
    expect(registers(4e6, 115_200)).toEqual([2, 0x0b]);
    expect(Math.round(actualBaud)).toBe(115_108);
    expect(printed(errorPercent, 3)).toBe(-0.08);
  });

  test("RM0352 Table 122, 4 MHz, 230400 baud: 1 + 5/64; it prints 231911 and 0.656 %, the divisor gives 231884 and 0.644 %", () => {
    const { actualBaud, errorPercent } = nearest(rp2040, 4e6, 230_400);
    expect(registers(4e6, 230_400)).toEqual([1, 5]);
    expect(Math.round(actualBaud)).toBe(231_884);
    expect(printed(errorPercent, 3)).toBe(0.644);
  });

  test("RM0352 Table 122, 4 MHz, 38400 and 14400 baud: it prints 0.081 and 0.007 %, the divisors give 0.080 and 0.010 %", () => {
    const errors = [38_400, 14_400].map((baud) =>
      printed(Math.abs(nearest(rp2040, 4e6, baud).errorPercent), 3),
    );
    expect(errors).toEqual([0.08, 0.01]);
  });

  test("RP2040 datasheet, example of 115200 baud at 125 MHz (from memory): 67 + 52/64, 115207 baud, 0.006 %", () => {
    const { actualBaud, errorPercent } = nearest(rp2040, 125e6, 115_200);
    expect(registers(125e6, 115_200)).toEqual([67, 52]);
    expect(Math.round(actualBaud)).toBe(115_207);
    expect(printed(errorPercent, 3)).toBe(0.006);
  });
});

describe("RP2040: f / (16 B) in 64ths, worked out by hand", () => {
  test.each([
    [12e6, [625, 0], [312, 32], [156, 16], [78, 8]],
    [48e6, [2500, 0], [1250, 0], [625, 0], [312, 32]],
    [125e6, [6510, 27], [3255, 13], [1627, 39], [813, 51]],
    [133e6, [6927, 5], [3463, 35], [1731, 49], [865, 57]],
    [150e6, [7812, 32], [3906, 16], [1953, 8], [976, 36]],
  ] as const)("%s Hz", (hz, ...cells) => {
    expect([1200, 2400, 4800, 9600].map((baud) => registers(hz, baud))).toEqual(cells);
  });

  test("IBRD 0 is invalid, and IBRD 65535 takes no fraction (RM0352)", () => {
    expect(rp2040.actualBaud(125e6, { sampling: "PL011", value: 63 })).toBeUndefined();
    expect(rp2040.actualBaud(125e6, { sampling: "PL011", value: 65_535 * 64 })).toBeDefined();
    expect(rp2040.actualBaud(125e6, { sampling: "PL011", value: 65_535 * 64 + 1 })).toBeUndefined();
  });
});
