import { expect, test } from "vitest";
import { limitInWords, quantityInWords } from "../../../src-core/present/quantity.ts";

test.each([
  [100, "us", "100 us"],
  [2.0833333, "%", "2.083 %"],
  [0xf3, "hex", "0xF3"],
  [4, "hex", "0x04"],
  [16, "none", "16"],
  [16_000_000, "Hz", "16000000 Hz"],
  [-3.5, "%", "-3.5 %"],
] as const)("%d in %s reads %s", (value, unit, words) => {
  expect(quantityInWords(value, unit)).toBe(words);
});

test("a limit says which bound it is", () => {
  expect(limitInWords({ atLeast: 100, unit: "us" })).toBe("at least 100 us");
  expect(limitInWords({ atMost: 2, unit: "%" })).toBe("at most 2 %");
  expect(limitInWords({ atLeast: 30, atMost: 50, unit: "us" })).toBe("30 to 50 us");
  expect(limitInWords({ unit: "us" })).toBeUndefined();
});
