import type { Setting } from "./baud-generator.ts";

const LARGEST = 4095;

/** What `BAUD_TOL` is when a program does not define it, in per cent. avr-libc 2.0.0, util/setbaud.h. */
const SETBAUD_TOLERANCE = 2;

/**
 * UBRR and U2X that `util/setbaud.h` of avr-libc 2.0.0 chooses: U2X=0 with the nearest divisor, and U2X=1 only where
 * that is off by more than `tolerance` per cent. The value may exceed 4095, of which the header only warns.
 */
export function setbaudSetting(clockHz: number, baud: number, tolerance = SETBAUD_TOLERANCE): Setting {
  const normal = Math.floor((clockHz + 8 * baud) / (16 * baud)) - 1;
  /* The header's own comparison, in integers: a clock exactly at the tolerance stays with U2X=0. */
  const exact = 16 * (normal + 1) * baud;
  const isTooFast = 100 * clockHz > exact * (100 + tolerance);
  const isTooSlow = 100 * clockHz < exact * (100 - tolerance);
  if (!isTooFast && !isTooSlow) return { sampling: "U2X=0", value: normal };
  return { sampling: "U2X=1", value: Math.floor((clockHz + 4 * baud) / (8 * baud)) - 1 };
}

/**
 * UBRR and U2X that the serial class of the AVR sketch core 1.8.7 writes for `begin(baud)`: U2X=1 first, U2X=0 where
 * the divisor would pass 4095 and always for 57600 baud at 16 MHz. All in integers.
 */
export function sketchCoreSetting(clockHz: number, baud: number): Setting {
  const fast = half(Math.floor(Math.floor(clockHz / 4) / baud) - 1);
  const bootloaderRate = clockHz === 16_000_000 && baud === 57_600;
  if (fast <= LARGEST && !bootloaderRate) return { sampling: "U2X=1", value: fast };
  return { sampling: "U2X=0", value: half(Math.floor(Math.floor(clockHz / 8) / baud) - 1) };
}

/** Half of a 32-bit unsigned number, kept in 16 bits, as the core's variables have it. */
function half(value: number): number {
  return Math.floor((value >>> 0) / 2) & 0xffff;
}
