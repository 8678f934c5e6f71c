import type { Facts } from "../facts/facts.ts";
import { plain } from "../figures.ts";
import type { Span } from "../finding.ts";
import { actualBaudOf } from "./line-rate.ts";
import { sentInWords } from "./sent-byte.ts";

/** A few words that an editor shows behind a number. */
export interface InlayHint {
  /** Offset behind the number. */
  readonly offset: number;
  readonly text: string;
}

/**
 * Names of commands behind bytes that are sent, actual rates behind divisors, and bits behind bit times, where the source
 * has a number and no name. `text` is the text of `file`; hints whose place lies outside of `from` to `to` are left out.
 */
export function inlayHints(
  facts: Facts,
  file: string,
  text: string,
  from: number,
  to: number,
): readonly InlayHint[] {
  const hints = new Map<number, Set<string>>();
  const add = (span: Span, words: string | undefined): void => {
    if (words === undefined || span.file !== file || span.end < from || span.start > to) return;
    if (!/^[0-9(]/.test(text.slice(span.start, span.end))) return;
    hints.set(span.end, (hints.get(span.end) ?? new Set()).add(words));
  };
  for (const sequence of facts.ps2.sequences)
    for (const [index, { span }] of sequence.bytes.entries()) add(span, sentInWords(sequence, index));
  for (const setUp of facts.serial.setUps) {
    if (setUp.rate.kind !== "divisor") continue;
    const baud = actualBaudOf(setUp, facts.board.clock?.hz);
    add(setUp.span, baud === undefined ? undefined : `${plain(baud, 1)} baud`);
  }
  const baud = facts.serial.wantedBaud?.baud;
  for (const { bits } of facts.serial.bitBanged)
    for (const { us, span } of bits)
      add(span, baud === undefined ? undefined : `${plain((us * baud) / 1e6, 3)} bit at ${baud} baud`);
  // A place that means two things, as in a helper that is called twice, says neither.
  return [...hints]
    .filter(([, words]) => words.size === 1)
    .map(([offset, words]) => ({ offset, text: [...words].join("") }))
    .sort((a, b) => a.offset - b.offset);
}
