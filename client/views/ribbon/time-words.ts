import type { TimeWindow } from "../../../server/language-server/client-messages/runs.ts";

/** Picoseconds. */
const us = 1e6;
const ms = 1e9;

/** "812.4 ms", to a ten-thousandth of a millisecond. */
export function momentInWords(time: number): string {
  return `${rounded(time / ms, 4)} ms`;
}

/** "53.42 us", "12.34 ms", "1.2 s". */
export function durationInWords(time: number): string {
  if (time < ms) return `${rounded(time / us, 2)} us`;
  return time < 1000 * ms ? `${rounded(time / ms, 3)} ms` : `${rounded(time / (1000 * ms), 3)} s`;
}

/** "In sight: 12.3 ms to 48.1 ms, 35.8 ms of the run" */
export function windowInWords({ from, to }: TimeWindow): string {
  return `In sight: ${momentInWords(from)} to ${momentInWords(to)}, ${durationInWords(to - from)} of the run`;
}

function rounded(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}
