import type { Span } from "../finding.ts";

/** What a place in the code means, for people: Markdown of at most about a dozen lines. */
export interface Explanation {
  readonly markdown: string;
  /** The characters that it is about. */
  readonly span: Span;
}

/** What an explanation says, before it has a place. */
export interface Telling {
  readonly heading: string;
  readonly lines: readonly (string | undefined)[];
}

/** A heading in bold and the lines below it, each a paragraph; empty ones are left out. */
export function explanation(
  span: Span,
  heading: string,
  lines: readonly (string | undefined)[],
): Explanation {
  const { file, start, end } = span;
  const told = lines.filter((line) => line !== undefined && line !== "");
  return { markdown: [`**${heading}**`, ...told].join("\n\n"), span: { file, start, end } };
}

/** Whether the offset lies in the span or at its end, as an editor's cursor does. */
export function holds(span: Span, file: string, offset: number): boolean {
  return span.file === file && offset >= span.start && offset <= span.end;
}
