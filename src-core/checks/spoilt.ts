import type { Facts } from "../facts/facts.ts";
import type { Span } from "../finding.ts";
import { visibleRange } from "../reader/tokens.ts";

/** Whether a computation breaks within `span`: what follows from it is not reported again. */
export function isSpoilt(facts: Facts, span: Span): boolean {
  return facts.board.brokenConstants.some(({ kind, expression: { at } }) => {
    if (kind === "conversion") return false;
    const broken = visibleRange(at.first, at.last);
    return broken.file === span.file && broken.start < span.end && span.start < broken.end;
  });
}
