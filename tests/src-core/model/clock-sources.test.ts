import { describe, expect, test } from "vitest";
import { clockSources, combinedErrorPercent } from "../../../src-core/model/clock-sources.ts";

function tolerance(id: string): number {
  return clockSources.find((each) => each.id === id)?.tolerancePercent ?? Number.NaN;
}

describe("clock tolerance", () => {
  test.each([
    ["rc-factory", 10, "ATmega48PA/.../328P 8161D Table 28-1"],
    ["rc-calibrated", 1, "ATmega48PA/.../328P 8161D Table 28-1"],
    ["resonator", 0.5, "ceramic resonator catalogue P16E"],
  ])("%s: %s %%", (id, percent) => {
    expect(tolerance(id)).toBe(percent);
  });

  /** (1 + divisor) x (1 +- clock) - 1, by hand; 16 MHz, 1200 baud, UBRR 832 is 0.040016 % fast. */
  test.each([
    [0.040016, "rc-factory", -9.96, 10.04],
    [-0.07994, "rc-factory", -10.07, 9.91],
    [0.040016, "rc-calibrated", -0.96, 1.04],
    [0.160256, "resonator-over-temperature", -0.54, 0.86],
  ])("divisor %s %% with %s", (divisor, id, min, max) => {
    const combined = combinedErrorPercent(divisor, tolerance(id));
    expect(combined.min).toBeCloseTo(min, 2);
    expect(combined.max).toBeCloseTo(max, 2);
  });
});
