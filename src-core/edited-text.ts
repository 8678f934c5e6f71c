import type { Edit } from "./finding.ts";

/** A file's text after edits of it, which must not overlap. */
export function editedText(text: string, edits: readonly Edit[]): string {
  const lastFirst = [...edits].sort((a, b) => b.span.start - a.span.start || b.span.end - a.span.end);
  return lastFirst.reduce(
    (now, { span, text: put }) => now.slice(0, span.start) + put + now.slice(span.end),
    text,
  );
}
