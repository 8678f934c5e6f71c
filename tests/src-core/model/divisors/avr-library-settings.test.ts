import { describe, expect, test } from "vitest";
import {
  setbaudSetting,
  sketchCoreSetting,
} from "../../../../src-core/model/divisors/avr-library-settings.ts";

/**
 * Clock in MHz, baud, U2X and UBRR of avr-libc 2.0.0 util/setbaud.h, UBRR of the sketch core 1.8.7 with U2X=1. Both
 * worked out by hand from their integer expressions.
 */
const rows: readonly (readonly [mhz: number, baud: number, u2x: 0 | 1, setbaud: number, core: number])[] = [
  [1, 1200, 0, 51, 103],
  [1, 2400, 0, 25, 51],
  [1, 4800, 0, 12, 25],
  [1, 9600, 1, 12, 12],
  [8, 1200, 0, 416, 832],
  [8, 2400, 0, 207, 416],
  [8, 4800, 0, 103, 207],
  [8, 9600, 0, 51, 103],
  [12, 1200, 0, 624, 1249],
  [12, 2400, 0, 312, 624],
  [12, 4800, 0, 155, 312],
  [12, 9600, 0, 77, 155],
  [16, 1200, 0, 832, 1666],
  [16, 2400, 0, 416, 832],
  [16, 4800, 0, 207, 416],
  [16, 9600, 0, 103, 207],
  [20, 1200, 0, 1041, 2082],
  [20, 2400, 0, 520, 1041],
  [20, 4800, 0, 259, 520],
  [20, 9600, 0, 129, 259],
];

describe("divisors that libraries choose", () => {
  test.each(rows)("%s MHz, %s baud", (mhz, baud, u2x, setbaud, core) => {
    expect(setbaudSetting(mhz * 1e6, baud)).toEqual({ sampling: `U2X=${u2x}`, value: setbaud });
    expect(sketchCoreSetting(mhz * 1e6, baud)).toEqual({ sampling: "U2X=1", value: core });
  });

  test("the sketch core keeps U2X=0 for 57600 baud at 16 MHz, as its old boot loaders expect", () => {
    expect(sketchCoreSetting(16e6, 57_600)).toEqual({ sampling: "U2X=0", value: 16 });
  });

  test("and where U2X=1 would pass 4095", () => {
    expect(sketchCoreSetting(16e6, 300)).toEqual({ sampling: "U2X=0", value: 3332 });
  });
});
