import type { Span } from "../../finding.ts";
import type { LineIndex } from "../line-index.ts";
import type { Paint } from "./paint.ts";

/** Longer lines are cut around the mark, so that a minified file does not flood a terminal. */
const widest = 100;
/** Context kept before the mark of a cut line. */
const lead = 30;

/** The first line of `span` and a marker under it; nothing for a line that is empty. */
export function markedLine(span: Span, index: LineIndex, paint: Paint, indent: string): readonly string[] {
  const start = index.placeOf(span.start);
  const end = index.placeOf(span.end);
  const whole = index.lineText(start.line);
  if (whole.trim() === "") return [];
  const first = start.column - 1;
  const last = Math.max(first + 1, end.line === start.line ? end.column - 1 : whole.trimEnd().length);
  const cutAt = whole.length > widest && first > lead ? first - lead : 0;
  const shown = whole.slice(cutAt, cutAt + widest);
  const length = Math.max(1, Math.min(last - cutAt, shown.length) - (first - cutAt));
  const under = blankLike(shown.slice(0, first - cutAt)) + paint("mark", "^".repeat(length));
  const bar = paint("place", "|");
  return [`${indent}${bar} ${printable(shown)}`, `${indent}${bar} ${under}`];
}

/** Tabs stay tabs, so that the marker stands where the text does whatever the terminal's tab stops are. */
function blankLike(text: string): string {
  return text.replace(/[^\t]/g, " ");
}

/** Control characters of a broken file must not reach the terminal. */
function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, "\ufffd");
}
