import type { CheckResult } from "../../check-result.ts";
import type { Finding, Fix, NotUnderstood } from "../../finding.ts";
import { pageOfRule } from "../../rule-description.ts";
import type { FileLines } from "../line-index.ts";
import { countFindings } from "../summary.ts";
import { jsonSpan } from "./json-span.ts";

/** Version of the shape below; it rises when a reader of an older shape would go wrong. */
const shapeVersion = 1;

/**
 * The result as one JSON document, ended by a line feed. Lines and columns from 1, columns in UTF-16 units. `help` is
 * where the rule's page lies in the package, so that the document is the same on every machine.
 */
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
    help: pageOfRule(finding.rule),
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
