import type { LineFormat, Parity } from "./line-formats.ts";

/** UCSZn2:0 and the data bits they stand for; the other codes are reserved. */
const DATA_BITS: Readonly<Record<number, LineFormat["dataBits"]>> = { 0: 5, 1: 6, 2: 7, 3: 8, 7: 9 };

/** UPMn1:0; 1 is reserved. */
const PARITY: Readonly<Record<number, Parity>> = { 0: "none", 2: "even", 3: "odd" };

/** Frame bits of a USART, as numbers: UCSZn2:0 (0 to 7), UPMn1:0 (0 to 3), USBSn (0 or 1). */
export interface AvrFrameBits {
  readonly size: number;
  readonly parity: number;
  readonly stop: number;
}

/** What the bits select; undefined for reserved codes. ATmega48A/.../328P datasheet 8271, UCSRnC. */
export function avrLineFormat({ size, parity, stop }: AvrFrameBits): LineFormat | undefined {
  const dataBits = DATA_BITS[size];
  const kind = PARITY[parity];
  if (dataBits === undefined || kind === undefined) return undefined;
  return { dataBits, parity: kind, stopBits: stop === 1 ? 2 : 1 };
}

/** The bits that select a format; undefined for mark and space parity, which the USART lacks. */
export function avrFrameBits({ dataBits, parity, stopBits }: LineFormat): AvrFrameBits | undefined {
  const size = Object.entries(DATA_BITS).find(([, bits]) => bits === dataBits)?.[0];
  const code = Object.entries(PARITY).find(([, kind]) => kind === parity)?.[0];
  if (size === undefined || code === undefined) return undefined;
  return { size: Number(size), parity: Number(code), stop: stopBits === 2 ? 1 : 0 };
}

/** Eight data bits, no parity, one stop bit: what UCSRnC selects after a reset. */
export const AVR_RESET_FRAME: LineFormat = { dataBits: 8, parity: "none", stopBits: 1 };

/**
 * UCSRnC of a format with up to eight data bits: parity in bits 5 and 4, stop in bit 3, UCSZn1:0 in bits 2 and 1.
 * The sketch core's `SERIAL_7N1` and its kin have these values.
 */
export function ucsrcValue(format: LineFormat): number | undefined {
  const bits = avrFrameBits(format);
  if (bits === undefined || bits.size > 3) return undefined;
  return (bits.parity << 4) | (bits.stop << 3) | (bits.size << 1);
}

/** The bits of UCSRnC that select a format: UPMn1:0, USBSn, UCSZn1:0. */
export const UCSRC_FRAME_BITS = 0b0011_1110;
