/** How figures read in messages. */

/** `16 MHz`, `7.3728 MHz`, `32.768 kHz`. */
export function clockText(hz: number): string {
  if (hz >= 1e6) return `${plain(hz / 1e6, 6)} MHz`;
  return hz >= 1e3 ? `${plain(hz / 1e3, 6)} kHz` : `${plain(hz, 6)} Hz`;
}

/** `8.5 %`, `0.16 %`: two digits that count, no sign. */
export function percentText(percent: number): string {
  const size = Math.abs(percent);
  return `${plain(size, size >= 1 ? 1 : 2)} %`;
}

/** `833 us`, `7.5 ms`, `1.2 s`. */
export function timeText(us: number): string {
  if (us < 1000) return `${plain(us, us < 10 ? 1 : 0)} us`;
  if (us < 1e6) return `${plain(us / 1000, 2)} ms`;
  return `${plain(us / 1e6, 2)} s`;
}

/** `1202`, `2403.8`. */
export function baudText(baud: number): string {
  return plain(baud, baud < 1000 ? 1 : 0);
}

/** `0xF4`, `0x0C`, `0x1F40`: two digits at least. */
export function hexText(value: number | bigint): string {
  return `0x${value.toString(16).toUpperCase().padStart(2, "0")}`;
}

/** At most `digits` digits behind the point, none of them a trailing zero. */
export function plain(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

/** Bytes as documents print them: `40 3F 00`. */
export function bytesText(bytes: readonly number[]): string {
  return bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, "0")).join(" ");
}
