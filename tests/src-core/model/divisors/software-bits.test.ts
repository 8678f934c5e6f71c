import { describe, expect, test } from "vitest";
import { bitCycles } from "../../../../src-core/model/divisors/software-bits.ts";
import { generator, nearest, printed } from "./nearest.ts";

const timer0 = generator("avr-timer0-compare");

describe("bits timed by software, f / B worked out by hand", () => {
  test.each([
    [1e6, 1200, 833.33],
    [8e6, 1200, 6666.67],
    [9.6e6, 1200, 8000],
    [12e6, 9600, 1250],
    [16e6, 4800, 3333.33],
    [16.5e6, 1200, 13_750],
    [20e6, 2400, 8333.33],
  ])("%s Hz at %s baud: %s cycles", (hz, baud, cycles) => {
    expect(bitCycles(hz, baud)).toBeCloseTo(cycles, 2);
  });
});

describe("timer 0 of ATtiny25/45/85, f / (prescaler (OCR0A + 1)) worked out by hand", () => {
  test.each([
    [1e6, ["/8", 103, 0.16], ["/8", 51, 0.16], ["/1", 207, 0.16], ["/1", 103, 0.16]],
    [8e6, ["/64", 103, 0.16], ["/64", 51, 0.16], ["/8", 207, 0.16], ["/8", 103, 0.16]],
    [12e6, ["/64", 155, 0.16], ["/64", 77, 0.16], ["/64", 38, 0.16], ["/8", 155, 0.16]],
    [16e6, ["/64", 207, 0.16], ["/64", 103, 0.16], ["/64", 51, 0.16], ["/8", 207, 0.16]],
    [16.5e6, ["/64", 214, -0.07], ["/64", 106, 0.39], ["/64", 53, -0.54], ["/8", 214, -0.07]],
    [20e6, ["/256", 64, 0.16], ["/64", 129, 0.16], ["/64", 64, 0.16], ["/64", 32, -1.36]],
  ] as const)("%s Hz", (hz, ...cells) => {
    const found = [1200, 2400, 4800, 9600].map((baud) => {
      const { sampling, value, errorPercent } = nearest(timer0, hz, baud);
      return [sampling, value, printed(errorPercent, 2)];
    });
    expect(found).toEqual(cells);
  });

  test("clock select follows the prescaler: /64 is CS0 = 3", () => {
    expect(nearest(timer0, 8e6, 1200).registers).toEqual({ OCR0A: 103, CS0: 3 });
  });
});
