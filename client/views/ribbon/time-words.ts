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

function rounded(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}
