import { describe, expect, test } from "vitest";
import { errorOf, generator, nearest, printed } from "./nearest.ts";

const timer1 = generator("mcs51-timer1");

describe("8051 timer 1: reloads of hardware manual 4316E, Figure 2-21", () => {
  test.each([
    [11.0592, "SMOD=0", 1200, 0xe8],
    [11.0592, "SMOD=0", 2400, 0xf4],
    [11.0592, "SMOD=0", 4800, 0xfa],
    [11.0592, "SMOD=0", 9600, 0xfd],
    [12, "SMOD=0", 1200, 0xe6],
    [12, "SMOD=0", 2400, 0xf3],
    [12, "SMOD=1", 4800, 0xf3],
    [14.7456, "SMOD=0", 1200, 0xe0],
    [14.7456, "SMOD=0", 2400, 0xf0],
    [14.7456, "SMOD=0", 4800, 0xf8],
    [14.7456, "SMOD=0", 9600, 0xfc],
    [16, "SMOD=0", 2400, 0xef],
    [16, "SMOD=1", 4800, 0xef],
    [20, "SMOD=0", 1200, 0xd5],
    [20, "SMOD=0", 2400, 0xea],
    [20, "SMOD=0", 4800, 0xf5],
    [20, "SMOD=1", 9600, 0xf5],
  ])("%s MHz, %s, %s baud: %s", (mhz, smod, baud, reload) => {
    expect(nearest(timer1, mhz * 1e6, baud, smod).value).toBe(reload);
  });

  test("16 MHz, 1200 baud: DE is printed (2.1 % off), the nearest is DD (-0.8 %)", () => {
    expect(printed(errorOf(timer1, 16e6, 1200, { sampling: "SMOD=0", value: 0xde }), 1)).toBe(2.1);
    const found = nearest(timer1, 16e6, 1200, "SMOD=0");
    expect([found.value, printed(found.errorPercent, 1)]).toEqual([0xdd, -0.8]);
  });

  test("9600 baud at 1 MHz is out of range with SMOD=0", () => {
    expect(timer1.nearest(1e6, 9600, "SMOD=0").kind).toBe("out-of-range");
  });
});
