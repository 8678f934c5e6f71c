import type { Span } from "../../finding.ts";
import type { FileLines, LineColumn } from "../line-index.ts";

interface JsonRange {
  readonly start: LineColumn;
  readonly end: LineColumn;
}

/** A place for readers of JSON: lines and columns from 1, columns in UTF-16 units. */
export function jsonSpan(span: Span, lines: FileLines): { readonly file: string; readonly range: JsonRange } {
  const index = lines.of(span.file);
  return { file: span.file, range: { start: index.placeOf(span.start), end: index.placeOf(span.end) } };
}
