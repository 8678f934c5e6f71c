import { isBlank } from "./characters.ts";

const BACKSLASH = 92;
const NEWLINE = 10;

/**
 * The end of a line splice (backslash and newline) that begins at `position`, or -1. Blanks between the two
 * are let through, as general-purpose compilers do.
 */
export function spliceEnd(text: string, position: number): number {
  if (text.charCodeAt(position) !== BACKSLASH) return -1;
  let index = position + 1;
  while (isBlank(text.charCodeAt(index))) index += 1;
  return text.charCodeAt(index) === NEWLINE ? index + 1 : -1;
}

/** The first place at or after `position` that no splice covers. */
export function skipSplices(text: string, position: number): number {
  let index = position;
  for (let end = spliceEnd(text, index); end >= 0; end = spliceEnd(text, index)) index = end;
  return index;
}

/** Text with its splices taken out, and where each of its characters stood. */
export interface JoinedText {
  readonly text: string;
  /** Offsets of the characters, and one more for the end. */
  readonly offsets: readonly number[];
  /** The logical line goes on after this text. */
  readonly cut: boolean;
}

/** Up to `length` characters of the logical line from `position`, splices taken out. */
export function joinLine(text: string, position: number, length: number): JoinedText {
  const offsets: number[] = [];
  let joined = "";
  let index = skipSplices(text, position);
  while (index < text.length && text.charCodeAt(index) !== NEWLINE && offsets.length < length) {
    offsets.push(index);
    joined += text.charAt(index);
    index = skipSplices(text, index + 1);
  }
  offsets.push(index);
  return { text: joined, offsets, cut: offsets.length > length };
}
