import type { CheckResult } from "../check-result.ts";
import type { Edit, Finding, Span } from "../finding.ts";
import type { ProposedNotes } from "../note-proposal.ts";
import type { Action } from "./service.ts";

/** What can be done about the findings that touch `span`; `text` is the text of its file. */
export function actionsAt(result: CheckResult, span: Span, text: string): readonly Action[] {
  const settings = result.settingsFaults.flatMap(({ span: place, fix }): readonly Action[] =>
    fix === undefined || !touch(place, span)
      ? []
      : [{ title: fix.title, kind: "fix", edits: fix.edits, finding: undefined }],
  );
  const findings = result.findings.filter((finding) => touch(finding.span, span));
  return [
    ...settings,
    ...findings.flatMap((finding) =>
      finding.fixes.map(({ title, edits }): Action => ({ title, kind: "fix", edits, finding })),
    ),
    ...findings.filter(isAboutCode).map((finding): Action => allowing(finding, text)),
  ];
}

/** Notes that could be written about what touches `span`; `textOf` gives the text of the file that a note goes into. */
export function noteActionsAt(
  { proposals }: ProposedNotes,
  span: Span,
  textOf: (file: string) => string,
): readonly Action[] {
  return proposals
    .filter(({ span: about }) => touch(about, span))
    .map(({ note, before }) => ({
      title: `Write the note: ${note}`,
      kind: "note",
      edits: [noteBefore(note, before, textOf(before.file))],
      finding: undefined,
    }));
}

/** A cursor at either end of a finding touches it. */
function touch(a: Span, b: Span): boolean {
  return a.file === b.file && a.start <= b.end && b.start <= a.end;
}

/** A fault of a note is mended in the note, not allowed by another. */
function isAboutCode({ rule }: Finding): boolean {
  return !rule.startsWith("note/");
}

function allowing(finding: Finding, text: string): Action {
  return {
    title: `Allow ${finding.rule} here with a note`,
    kind: "allow",
    edits: [noteAbove(finding, text)],
    finding,
  };
}

function noteAbove({ rule, span }: Finding, text: string): Edit {
  return lineAbove(`@wire allow ${rule} because "say here why it is right"`, span, text);
}

/** Above a declaration; where other code ends on its line, between the two, as a note belongs to what comes next. */
function noteBefore(note: string, before: Span, text: string): Edit {
  const line = text.slice(text.lastIndexOf("\n", before.start - 1) + 1, before.start);
  const above = lineAbove(note, before, text);
  if (!/[;{}]/.test(line)) return above;
  const { file, start } = before;
  return { span: { file, start, end: start }, text: `${lineEndOf(text)}${above.text}` };
}

/** A comment on a line of its own above the one of `span`, indented like it. */
function lineAbove(comment: string, { file, start }: Span, text: string): Edit {
  const line = startOfLogicalLine(text, start);
  const indent = /^[ \t]*/.exec(text.slice(line))?.[0] ?? "";
  return { span: { file, start: line, end: line }, text: `${indent}// ${comment}${lineEndOf(text)}` };
}

function lineEndOf(text: string): string {
  return text.includes("\r\n") ? "\r\n" : "\n";
}

/** A comment must not come between a line that ends in a backslash and the one that continues it. */
function startOfLogicalLine(text: string, offset: number): number {
  let start = text.lastIndexOf("\n", offset - 1) + 1;
  while (start > 0 && /\\\r?\n$/.test(text.slice(Math.max(0, start - 3), start))) {
    start = text.lastIndexOf("\n", start - 2) + 1;
  }
  return start;
}
