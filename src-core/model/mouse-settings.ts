import { quantity } from "./quantities.ts";
import type { Confidence, Source } from "./sources.ts";

/** Reports per second that command F3 takes. */
export const sampleRates: readonly number[] = quantity("ps2.sample-rate")?.values ?? [];

export interface Resolution {
  /** Argument of command E8. */
  readonly code: number;
  readonly countsPerMm: number;
  /** As drivers count it; 8 counts per millimetre are 203 per inch. */
  readonly countsPerInch: number;
}

/** ADNK-5023 design manual, p. 9; counts per inch from FreeBSD manual psm(4). */
export const resolutions: readonly Resolution[] = [
  { code: 0, countsPerMm: 1, countsPerInch: 25 },
  { code: 1, countsPerMm: 2, countsPerInch: 50 },
  { code: 2, countsPerMm: 4, countsPerInch: 100 },
  { code: 3, countsPerMm: 8, countsPerInch: 200 },
];

/** State of a mouse after a reset (FF) or after "set defaults" (F6). */
export interface MouseDefaults {
  readonly sampleRate: number;
  readonly resolution: number;
  readonly scaling: "1:1" | "2:1";
  readonly mode: "stream" | "remote";
  readonly reporting: boolean;
  readonly id: number;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

export const mouseDefaults: MouseDefaults = {
  sampleRate: 100,
  resolution: 2,
  scaling: "1:1",
  mode: "stream",
  reporting: false,
  id: 0,
  sources: [
    { document: "em84502", place: "section E a" },
    { document: "sc84502", place: "defaults" },
    { document: "interruptList", place: "settings after reset" },
  ],
  confidence: "read",
};

/** What 2:1 scaling makes of small counts; from 6 on it doubles. From memory, no text reached. */
const SCALED = [0, 1, 1, 3, 6, 9] as const;

/** Counts that a mouse reports for `counts` with 2:1 scaling; the sign is kept. Stream mode only. */
export function scaledTwoToOne(counts: number): number {
  const size = Math.abs(counts);
  const scaled = SCALED[size] ?? 2 * size;
  return counts < 0 ? -scaled : scaled;
}
