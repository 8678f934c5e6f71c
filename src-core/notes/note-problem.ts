import type { Edit, Finding, Fix, RelatedPlace, Span } from "../finding.ts";

/** The four rules that speak about notes themselves. */
export type NoteRule = "note/syntax" | "note/unknown-name" | "note/mismatch" | "note/unattached";

/** What is wrong with a note: a finding whose severity the settings decide later. */
export interface NoteProblem extends Omit<Finding, "rule" | "severity"> {
  readonly rule: NoteRule;
}

export interface NoteProblemDetails {
  readonly related?: readonly RelatedPlace[];
  readonly fixes?: readonly Fix[];
}

export function noteProblem(
  rule: NoteRule,
  span: Span,
  message: string,
  details: NoteProblemDetails = {},
): NoteProblem {
  return {
    rule,
    span: { file: span.file, start: span.start, end: span.end },
    message,
    related: details.related ?? [],
    fixes: details.fixes ?? [],
  };
}

/** The fix that puts `text` in the place of `span`. */
export function replacement(span: Span, text: string): Fix {
  const edit: Edit = { span: { file: span.file, start: span.start, end: span.end }, text };
  return { title: span.start === span.end ? `Add ${text.trim()}` : `Write ${text}`, edits: [edit] };
}
