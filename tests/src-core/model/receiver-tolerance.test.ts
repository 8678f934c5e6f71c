import { describe, expect, test } from "vitest";
import {
  receiverTolerance,
  recommendedErrorPercent,
  type SamplesPerBit,
} from "../../../src-core/model/receiver-tolerance.ts";

/** D, Rslow %, Rfast %, recommended maximum error % as printed. */
type Row = readonly [bits: number, slow: number, fast: number, recommended: number];

/** ATmega328P 7810C Table 19-2, U2X=0. */
const sixteen: readonly Row[] = [
  [5, 93.2, 106.67, 3.0],
  [6, 94.12, 105.79, 2.5],
  [7, 94.81, 105.11, 2.0],
  [8, 95.36, 104.58, 2.0],
  [9, 95.81, 104.14, 1.5],
  [10, 96.17, 103.78, 1.5],
];

/** ATmega328PB Table 24-3, U2X=1. */
const eight: readonly Row[] = [
  [5, 94.12, 105.66, 2.5],
  [6, 94.92, 104.92, 2.0],
  [7, 95.52, 104.35, 1.5],
  [8, 96.0, 103.9, 1.5],
  [9, 96.39, 103.53, 1.5],
  [10, 96.7, 103.23, 1.0],
];

function check(bits: number, samples: SamplesPerBit, slow: number, fast: number): void {
  const tolerance = receiverTolerance(bits, samples);
  expect(tolerance.slowPercent).toBeCloseTo(slow, 1);
  expect(Math.abs(tolerance.slowPercent - slow)).toBeLessThan(0.011);
  expect(Math.abs(tolerance.fastPercent - fast)).toBeLessThan(0.011);
}

describe("receiver tolerance of the AVR USART", () => {
  test.each(sixteen)("ATmega328P 7810C Table 19-2: D=%s", (bits, slow, fast, recommended) => {
    check(bits, 16, slow, fast);
    /* For D=6 ATmega8 2486T Table 53 prints 2.0, which is the stricter. */
    expect(recommendedErrorPercent(bits, 16)).toBe(bits === 6 ? 2.0 : recommended);
  });

  test.each(eight)("ATmega328PB Table 24-3: D=%s", (bits, slow, fast, recommended) => {
    check(bits, 8, slow, fast);
    expect(recommendedErrorPercent(bits, 8)).toBe(recommended);
  });

  test("Table 19-2 prints -4.54 % as the lower total error of D=8; Rslow 95.36 % makes it -4.64 %", () => {
    expect((receiverTolerance(8, 16).slowPercent - 100).toFixed(2)).toBe("-4.64");
  });

  test("no recommendation outside of the tables", () => {
    expect(recommendedErrorPercent(4, 16)).toBeUndefined();
    expect(recommendedErrorPercent(11, 8)).toBeUndefined();
  });
});
