import type { CarriedByte } from "../../../server/language-server/client-messages/runs.ts";

/** The byte of a text in hexadecimal, with or without 0x; undefined for anything else. */
export function byteOf(text: string): number | undefined {
  const [, digits] = /^\s*(?:0x)?([0-9a-f]{1,2})\s*$/i.exec(text) ?? [];
  return digits === undefined ? undefined : Number.parseInt(digits, 16);
}

/** The next byte of this value that begins after a moment, or the last before it; around the end of the run where there is none. */
export function findByte(
  bytes: readonly CarriedByte[],
  byte: number,
  from: number,
  direction: "next" | "previous",
): CarriedByte | undefined {
  const same = bytes.filter((each) => each.byte === byte);
  return direction === "next"
    ? (same.find((each) => each.from > from) ?? same[0])
    : (same.findLast((each) => each.from < from) ?? same.at(-1));
}
