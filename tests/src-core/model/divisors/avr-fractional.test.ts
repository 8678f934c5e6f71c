import { describe, expect, test } from "vitest";
import { generator, nearest, printed } from "./nearest.ts";

const avr = generator("avr-fractional");

/**
 * No published table with errors was found: BAUD = 64 f / (S B) of the tinyAVR and AVR Dx datasheets, worked out by
 * hand. Rows: peripheral clock in Hz, S, and BAUD for 1200, 2400, 4800, 9600; 0 where it passes 65535.
 */
const rows: readonly (readonly [hz: number, mode: "NORMAL" | "CLK2X", readonly number[]])[] = [
  [1e6, "NORMAL", [3333, 1667, 833, 417]],
  [1e6, "CLK2X", [6667, 3333, 1667, 833]],
  [16e6 / 6, "NORMAL", [8889, 4444, 2222, 1111]],
  [16e6 / 6, "CLK2X", [17778, 8889, 4444, 2222]],
  [20e6 / 6, "NORMAL", [11111, 5556, 2778, 1389]],
  [20e6 / 6, "CLK2X", [22222, 11111, 5556, 2778]],
  [8e6, "NORMAL", [26667, 13333, 6667, 3333]],
  [8e6, "CLK2X", [53333, 26667, 13333, 6667]],
  [12e6, "NORMAL", [40000, 20000, 10000, 5000]],
  [12e6, "CLK2X", [0, 40000, 20000, 10000]],
  [16e6, "NORMAL", [53333, 26667, 13333, 6667]],
  [16e6, "CLK2X", [0, 53333, 26667, 13333]],
  [20e6, "NORMAL", [0, 33333, 16667, 8333]],
  [20e6, "CLK2X", [0, 0, 33333, 16667]],
  [24e6, "NORMAL", [0, 40000, 20000, 10000]],
  [24e6, "CLK2X", [0, 0, 40000, 20000]],
];

describe("AVR 0/1 series and Dx", () => {
  test.each(rows)("%s Hz, %s", (hz, mode, expected) => {
    const found = [1200, 2400, 4800, 9600].map((baud) => {
      const result = avr.nearest(hz, baud, mode);
      return result.kind === "setting" ? result.setting.value : 0;
    });
    expect(found).toEqual(expected);
  });

  test("errors: 64 x 1 MHz / (16 x 833) = 4801.92 baud, 0.040 % fast", () => {
    expect(printed(nearest(avr, 1e6, 4800, "NORMAL").errorPercent, 3)).toBe(0.04);
    expect(printed(nearest(avr, 1e6, 9600, "NORMAL").errorPercent, 3)).toBe(-0.08);
  });

  test("1200 baud cannot be made at 20 and 24 MHz with either oversampling", () => {
    expect(avr.nearest(20e6, 1200).kind).toBe("out-of-range");
    expect(avr.nearest(24e6, 1200).kind).toBe("out-of-range");
  });

  test("the integer part is at least 1: BAUD below 64 is refused", () => {
    expect(avr.actualBaud(16e6, { sampling: "NORMAL", value: 63 })).toBeUndefined();
    expect(avr.actualBaud(16e6, { sampling: "NORMAL", value: 64 })).toBe(1e6);
  });
});
