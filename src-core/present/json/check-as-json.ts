import type { CheckResult } from "../../check-result.ts";
import type { Finding, Fix, NotUnderstood, Span } from "../../finding.ts";
import type { FileLines, LineColumn } from "../line-index.ts";
import { countFindings } from "../summary.ts";

/** Version of the shape below; it rises when a reader of an older shape would go wrong. */
const shapeVersion = 1;

interface JsonRange {
  readonly start: LineColumn;
  readonly end: LineColumn;
}

/** The result as one JSON document, ended by a line feed. Lines and columns from 1, columns in UTF-16 units. */
export function checkAsJson(result: CheckResult, lines: FileLines): string {
  const document = {
    version: shapeVersion,
    findings: result.findings.map((finding) => jsonFinding(finding, lines)),
    notUnderstood: result.notUnderstood.map((one) => jsonNotUnderstood(one, lines)),
    summary: countFindings(result),
  };
  return `${JSON.stringify(document, undefined, 2)}\n`;
}

function jsonFinding(finding: Finding, lines: FileLines): object {
  return {
    rule: finding.rule,
    severity: finding.severity,
    ...jsonSpan(finding.span, lines),
    message: finding.message,
    ...(finding.measured === undefined ? {} : { measured: finding.measured }),
    ...(finding.limit === undefined ? {} : { limit: finding.limit }),
    ...(finding.source === undefined ? {} : { source: finding.source }),
    fixes: finding.fixes.map((fix) => jsonFix(fix, lines)),
  };
}

function jsonNotUnderstood(one: NotUnderstood, lines: FileLines): object {
  return { ...jsonSpan(one.span, lines), message: one.message };
}

function jsonFix(fix: Fix, lines: FileLines): object {
  return {
    title: fix.title,
    edits: fix.edits.map((edit) => ({ ...jsonSpan(edit.span, lines), text: edit.text })),
  };
}

function jsonSpan(span: Span, lines: FileLines): { readonly file: string; readonly range: JsonRange } {
  const index = lines.of(span.file);
  return { file: span.file, range: { start: index.placeOf(span.start), end: index.placeOf(span.end) } };
}
