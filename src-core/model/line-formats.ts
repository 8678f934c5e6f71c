import type { ReportLayout } from "./layouts/layout.ts";
import type { Source } from "./sources.ts";

export type Parity = "none" | "even" | "odd" | "mark" | "space";

export interface LineFormat {
  readonly dataBits: 5 | 6 | 7 | 8 | 9;
  readonly parity: Parity;
  readonly stopBits: 1 | 2;
}

const PARITY_LETTERS: Readonly<Record<string, Parity>> = {
  N: "none",
  E: "even",
  O: "odd",
  M: "mark",
  S: "space",
};

const DATA_BITS = [5, 6, 7, 8, 9] as const;

/** `7N1`, `8E2`; undefined for anything else. Capitals do not matter. */
export function parseLineFormat(text: string): LineFormat | undefined {
  const parts = /^([5-9])([NEOMS])([12])$/.exec(text.toUpperCase());
  const dataBits = DATA_BITS.find((bits) => bits === Number(parts?.[1]));
  const parity = PARITY_LETTERS[parts?.[2] ?? ""];
  if (dataBits === undefined || parity === undefined) return undefined;
  return { dataBits, parity, stopBits: parts?.[3] === "2" ? 2 : 1 };
}

export function formatLineFormat({ dataBits, parity, stopBits }: LineFormat): string {
  return `${dataBits}${parity.charAt(0).toUpperCase()}${stopBits}`;
}

/** Bits of one byte on the wire: start, data, parity, stop. */
export function bitsPerFrame({ dataBits, parity, stopBits }: LineFormat): number {
  return 1 + dataBits + (parity === "none" ? 0 : 1) + stopBits;
}

/** Milliseconds that one byte takes at `baud`. */
export function byteTimeMs(format: LineFormat, baud: number): number {
  return (bitsPerFrame(format) * 1000) / baud;
}

/** Reports of `bytes` bytes that fit into a second at `baud`, sent back to back. */
export function reportsPerSecond(format: LineFormat, baud: number, bytes: number): number {
  return baud / (bitsPerFrame(format) * bytes);
}

export type Acceptance =
  /** A PC that expects the layout reads every byte. */
  | { readonly kind: "accepted" }
  /** Read if bit 7 of every byte is 1, which the receiver takes for a stop bit. */
  | { readonly kind: "accepted-with-bit-7-set" }
  | { readonly kind: "refused"; readonly reason: string };

/** The format that costs least time: the first one that a PC reads. */
export function preferredLineFormat(layout: ReportLayout): LineFormat {
  return { dataBits: layout.dataBits, parity: "none", stopBits: 1 };
}

export const lineFormatSource: Source = { document: "externalComSpecification", place: "2.2" };

/**
 * Whether a PC that expects a serial layout reads bytes sent in `format`. Seven data bits may also be sent with two
 * stop bits, with mark parity, or as eight data bits with the top bit set: all the same on the wire as 7N1
 * followed by mark. Plug and Play External COM Device Specification, 2.2.
 */
export function acceptance(layout: ReportLayout, format: LineFormat): Acceptance {
  if (layout.dataBits === 8) return acceptanceOfEight(format);
  if (format.dataBits === 7) {
    if (format.parity === "none" || format.parity === "mark") return { kind: "accepted" };
    return {
      kind: "refused",
      reason: "the PC takes the parity bit for a stop bit and finds it low in some bytes",
    };
  }
  if (format.dataBits !== 8)
    return { kind: "refused", reason: `the layout has 7 data bits, not ${format.dataBits}` };
  if (format.parity === "none" || format.parity === "mark") return { kind: "accepted-with-bit-7-set" };
  return {
    kind: "refused",
    reason: "a parity bit after eight data bits is taken for the next start bit when low",
  };
}

function acceptanceOfEight({ dataBits, parity }: LineFormat): Acceptance {
  if (dataBits !== 8) return { kind: "refused", reason: `the layout has 8 data bits, not ${dataBits}` };
  if (parity === "none" || parity === "mark") return { kind: "accepted" };
  return {
    kind: "refused",
    reason: "the PC takes the parity bit for a stop bit and finds it low in some bytes",
  };
}
