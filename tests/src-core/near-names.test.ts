import { describe, expect, it } from "vitest";
import { nearestNames } from "../../src-core/near-names.ts";

describe("names that may have been meant", () => {
  it.each([
    ["a letter changed", "clack", ["clock", "data"], ["clock"]],
    ["a letter left out", "clok", ["clock", "data"], ["clock"]],
    ["a letter too many", "clocck", ["clock", "data"], ["clock"]],
    ["neighbours swapped", "rihgt", ["left", "right"], ["right"]],
    ["another case", "ATMEGA328P", ["atmega328p"], ["atmega328p"]],
    ["nearest first", "atmega328", ["atmega32u4", "atmega328p", "attiny85"], ["atmega328p", "atmega32u4"]],
    ["several alike", "PD9", ["PD2", "PB0", "PD3"], ["PD2", "PD3"]],
    ["only those about as near", "bit-tme", ["byte-time", "bit-time"], ["bit-time"]],
    ["nothing near", "harbour", ["clock", "data"], []],
    ["names of one letter must be right", "z", ["x", "y"], []],
    ["no names at all", "clock", [], []],
  ] as const)("%s", (_, name, candidates, expected) => {
    expect(nearestNames(name, candidates)).toEqual(expected);
  });

  it("gives no more than asked for", () => {
    expect(nearestNames("PD9", ["PD1", "PD2", "PD3", "PD4"], 2)).toEqual(["PD1", "PD2"]);
  });
});
