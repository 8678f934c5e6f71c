import { describe, expect, test } from "vitest";
import { type Colour, colourOf, contrast, inkOn } from "../../../../client/views/ribbon/contrast.ts";

const white: Colour = [255, 255, 255, 1];
const black: Colour = [0, 0, 0, 1];

describe("contrast", () => {
  // Web Content Accessibility Guidelines 2.1: 21 to 1 is the most there is; its technique G18 lets #767676 just pass on white.
  test("is what the guidelines say", () => {
    expect(contrast(white, black)).toBeCloseTo(21, 5);
    expect(contrast(white, white)).toBe(1);
    expect(contrast(colourOf("#767676"), white)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(colourOf("#777777"), white)).toBeLessThan(4.5);
  });
});

test("what a canvas writes is read", () => {
  expect(colourOf("#388a34")).toEqual([0x38, 0x8a, 0x34, 1]);
  expect(colourOf("rgba(234, 92, 0, 0.33)")).toEqual([234, 92, 0, 0.33]);
});

test.each<[Colour, Colour, Colour]>([
  // A third of orange on white is pale, the same on black is dark.
  [[234, 92, 0, 0.33], white, black],
  [[234, 92, 0, 0.33], black, white],
  [[0, 60, 160, 1], white, white],
])("on %o over %o text is %o", (fill, paper, ink) => {
  expect(inkOn(fill, paper, [white, black])).toEqual(ink);
});
