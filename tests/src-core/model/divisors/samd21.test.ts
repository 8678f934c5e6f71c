import { describe, expect, test } from "vitest";
import { errorOf, generator, nearest, printed } from "./nearest.ts";

const arithmetic = generator("samd21-arithmetic");
const fractional = generator("samd21-fractional");
const bauds = [1200, 2400, 4800, 9600] as const;

describe("SAM D21, arithmetic mode", () => {
  /** BAUD = 65536 (1 - 16 B / f), DS40001882D Table 25-2, worked out by hand: value and error in per cent. */
  test.each([
    [1e6, [64278, -0.02], [63019, 0.02], [60503, 0], [55470, 0]],
    [8e6, [65379, -0.18], [65221, 0.14], [64907, -0.02], [64278, -0.02]],
    [48e6, [65510, -0.82], [65484, -0.82], [65431, 0.14], [65326, 0.14]],
  ] as const)("%s Hz, 16 samples", (hz, ...cells) => {
    const found = bauds.map((baud) => {
      const { value, errorPercent } = nearest(arithmetic, hz, baud, "SAMPR=0");
      return [value, printed(errorPercent, 2)];
    });
    expect(found).toEqual(cells);
  });

  /**
   * "Baud rate vs. BAUD register value", 42181G Table 24-3, f = 48 MHz: whole CPU cycles of a frame of 10 bits. Where in
   * its step the generator stands when the frame begins moves the count by less than one cycle.
   */
  test.each([
    [0, 160],
    [406, 160],
    [407, 161],
    [808, 161],
    [809, 162],
    [1205, 162],
    [65206, 31775],
    [65207, 31871],
    [65208, 31969],
  ])("Table 24-3, BAUD %s: %s cycles per frame", (value, cycles) => {
    const baud = arithmetic.actualBaud(48e6, { sampling: "SAMPR=0", value }) ?? Number.NaN;
    expect(Math.abs((10 * 48e6) / baud - cycles)).toBeLessThan(1);
  });

  test("65535 in place of 65536, and no rounding, is 6.8 % fast at 48 MHz and 1200 baud", () => {
    const trap = Math.floor(65_535 * (1 - (16 * 1200) / 48e6));
    expect(trap).toBe(65_508);
    expect(printed(errorOf(arithmetic, 48e6, 1200, { sampling: "SAMPR=0", value: trap }), 2)).toBe(6.81);
  });

  test("a rate above f / S is refused", () => {
    expect(arithmetic.nearest(1e6, 115_200, "SAMPR=0").kind).toBe("out-of-range");
  });
});

describe("SAM D21, fractional mode", () => {
  /** f / (16 B) in eighths, DS40001882D Table 25-2, worked out by hand: BAUD, FP, error in per cent. */
  test.each([
    [1e6, [52, 1, -0.08], [26, 0, 0.16], [13, 0, 0.16], [6, 4, 0.16]],
    [8e6, [416, 5, 0.01], [208, 3, -0.02], [104, 1, 0.04], [52, 1, -0.08]],
    [48e6, [2500, 0, 0], [1250, 0, 0], [625, 0, 0], [312, 4, 0]],
  ] as const)("%s Hz, 16 samples", (hz, ...cells) => {
    const found = bauds.map((baud) => {
      const { registers, errorPercent } = nearest(fractional, hz, baud, "SAMPR=1");
      return [registers.BAUD, registers.FP, printed(errorPercent, 2)];
    });
    expect(found).toEqual(cells);
  });

  test("BAUD is at least 1", () => {
    expect(fractional.actualBaud(48e6, { sampling: "SAMPR=1", value: 7 })).toBeUndefined();
    expect(fractional.actualBaud(48e6, { sampling: "SAMPR=1", value: 8 })).toBe(3e6);
  });
});
