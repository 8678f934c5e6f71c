import type { Edit, Span } from "../../finding.ts";
import { isStandIn, type Token } from "../../reader/tokens.ts";
import type { At } from "../../reader/typed/nodes.ts";

/** The texts of the files that may be changed; undefined for one that cannot. */
export type TextOf = (file: string) => string | undefined;

/** Where a token can be written over: in a file, or in the body of a macro. */
export function ownSpan(token: Token, textOf: TextOf): Span | undefined {
  const { file, start, end } = token;
  // A token made by `##`, or of a built-in header, stands nowhere as it is.
  if (isStandIn(file) || textOf(file)?.slice(start, end) !== token.text) return undefined;
  return { file, start, end };
}

/** Where a stretch of code can be written over; undefined where it comes out of a macro. */
export function ownRange({ first, last }: At, textOf: TextOf): Span | undefined {
  if (first.macro !== undefined || last.macro !== undefined) return undefined;
  const [from, to] = [ownSpan(first, textOf), ownSpan(last, textOf)];
  if (from === undefined || to === undefined || from.file !== to.file) return undefined;
  return { file: from.file, start: from.start, end: to.end };
}

export function replaced(span: Span, text: string): Edit {
  return { span, text };
}

export function inserted({ file }: Span, at: number, text: string): Edit {
  return { span: { file, start: at, end: at }, text };
}

export function liesIn(inner: Span, outer: Span): boolean {
  return inner.file === outer.file && inner.start >= outer.start && inner.end <= outer.end;
}
