import type { Source } from "./sources.ts";

export type SamplesPerBit = 16 | 8;

/** How far off a sender's rate may be before the last bit is misread, in per cent of the receiver's own rate. */
export interface ReceiverTolerance {
  /** Slowest sender, relative to the receiver's rate: 94.81 for 94.81 %. */
  readonly slowPercent: number;
  readonly fastPercent: number;
}

/** First of the three samples of a bit that vote on it, counted from 1; the middle one. */
export const FIRST_SAMPLE: Readonly<Record<SamplesPerBit, number>> = { 16: 8, 8: 4 };
const MIDDLE_SAMPLE: Readonly<Record<SamplesPerBit, number>> = { 16: 9, 8: 5 };

export const receiverToleranceSource: Source = {
  document: "atmega328pPreliminary",
  place: "Table 19-2",
};

/** `bits` counts data bits and the parity bit; a start bit and one stop bit are assumed. */
export function receiverTolerance(bits: number, samples: SamplesPerBit): ReceiverTolerance {
  const slow = ((bits + 1) * samples) / (samples - 1 + bits * samples + FIRST_SAMPLE[samples]);
  const fast = ((bits + 2) * samples) / ((bits + 1) * samples + MIDDLE_SAMPLE[samples]);
  return { slowPercent: slow * 100, fastPercent: fast * 100 };
}

/**
 * Recommended largest error of one end, in per cent, by data bits and parity bit: the total shared by both ends.
 * For 6 bits and 16 samples the ATmega328P datasheet prints 2.5, the ATmega8 datasheet (2486T, Table 53) 2.0: the
 * stricter stands here.
 */
const RECOMMENDED: Readonly<Record<SamplesPerBit, Readonly<Record<number, number>>>> = {
  16: { 5: 3, 6: 2, 7: 2, 8: 2, 9: 1.5, 10: 1.5 },
  8: { 5: 2.5, 6: 2, 7: 1.5, 8: 1.5, 9: 1.5, 10: 1 },
};

export const recommendedErrorSources: Readonly<Record<SamplesPerBit, Source>> = {
  16: { document: "atmega328pPreliminary", place: "Table 19-2" },
  8: { document: "atmega328pb", place: "Table 24-3" },
};

/** Plus or minus per cent; undefined outside of 5 to 10 bits. */
export function recommendedErrorPercent(bits: number, samples: SamplesPerBit): number | undefined {
  return RECOMMENDED[samples][bits];
}
