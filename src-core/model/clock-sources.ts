import type { Confidence, Source } from "./sources.ts";

/** What makes a chip's clock, and how far off it may be. */
export interface ClockSource {
  readonly id: string;
  readonly title: string;
  /** Plus or minus per cent. */
  readonly tolerancePercent: number;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

export const clockSources: readonly ClockSource[] = [
  {
    id: "crystal",
    title: "quartz crystal",
    tolerancePercent: 0.005,
    sources: [],
    confidence: "memory",
  },
  {
    id: "resonator",
    title: "ceramic resonator at room temperature",
    tolerancePercent: 0.5,
    sources: [{ document: "resonatorCatalogue", place: "leaded types, 24 MHz" }],
    confidence: "read",
  },
  {
    id: "resonator-over-temperature",
    title: "ceramic resonator from -20 to 80 degrees",
    tolerancePercent: 0.7,
    sources: [{ document: "resonatorCatalogue", place: "leaded types, 24 MHz" }],
    confidence: "computed",
  },
  {
    id: "rc-calibrated",
    title: "internal RC oscillator, calibrated by the user",
    tolerancePercent: 1,
    sources: [
      { document: "atmega328Ranges", place: "Table 28-1" },
      { document: "atmega328Current", place: "Table 29-9" },
    ],
    confidence: "read",
  },
  {
    id: "rc-calibrated-loose",
    title: "internal RC oscillator, some time after its calibration",
    tolerancePercent: 2,
    sources: [],
    confidence: "memory",
  },
  {
    id: "rc-factory",
    title: "internal RC oscillator as it leaves the factory",
    tolerancePercent: 10,
    sources: [
      { document: "atmega328Ranges", place: "Table 28-1" },
      { document: "attiny261a", place: "Table 19-2" },
    ],
    confidence: "read",
  },
];

/** Slowest and fastest rate, in per cent off, of a divisor's error and a clock's tolerance together. */
export function combinedErrorPercent(
  divisorErrorPercent: number,
  tolerancePercent: number,
): { readonly min: number; readonly max: number } {
  const off = (clock: number): number => divisorErrorPercent + clock + (divisorErrorPercent * clock) / 100;
  return { min: off(-tolerancePercent), max: off(tolerancePercent) };
}
