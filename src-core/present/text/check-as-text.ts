import type { CheckResult } from "../../check-result.ts";
import type { Finding } from "../../finding.ts";
import type { FileLines } from "../line-index.ts";
import { limitInWords, measuredInWords } from "../quantity.ts";
import { basisInWords, countFindings, summaryInWords } from "../summary.ts";
import { markedLine } from "./marked-line.ts";
import type { Paint } from "./paint.ts";

const indent = "      ";

/** The result for a reader at a terminal: grouped by file, each finding with its line of source, a summary last. */
export function checkAsText(result: CheckResult, lines: FileLines, paint: Paint): string {
  const parts = [...byFile(result.findings)].map(([file, findings]) =>
    [paint("file", file), ...findings.map((finding) => findingAsText(finding, lines, paint))].join("\n\n"),
  );
  const notUnderstood = notUnderstoodAsText(result, lines, paint);
  if (notUnderstood !== undefined) parts.push(notUnderstood);
  parts.push(summaryAsText(result, paint));
  return `${parts.join("\n\n")}\n`;
}

function findingAsText(finding: Finding, lines: FileLines, paint: Paint): string {
  const index = lines.of(finding.span.file);
  const { line, column } = index.placeOf(finding.span.start);
  const heading = [
    paint("place", `  ${line}:${column}`),
    `${paint(finding.severity, finding.severity)}: ${finding.message}`,
    paint("label", `[${finding.rule}]`),
  ].join("  ");
  return [
    heading,
    ...markedLine(finding.span, index, paint, indent),
    ...detailLines(finding, lines, paint),
  ].join("\n");
}

function detailLines(finding: Finding, lines: FileLines, paint: Paint): readonly string[] {
  const details: [label: string, text: string][] = [];
  const limit = finding.limit === undefined ? undefined : limitInWords(finding.limit);
  if (finding.measured !== undefined) details.push(["found", measuredInWords(finding.measured)]);
  if (limit !== undefined) details.push(["limit", limit]);
  if (finding.source !== undefined) details.push(["source", finding.source]);
  for (const related of finding.related) {
    const { line, column } = lines.of(related.span.file).placeOf(related.span.start);
    details.push(["see", `${related.span.file}:${line}:${column} ${related.message}`]);
  }
  for (const fix of finding.fixes) details.push(["fix", fix.title]);
  return details.map(([label, text]) => `${indent}${paint("label", label.padEnd(7))} ${text}`);
}

function notUnderstoodAsText(result: CheckResult, lines: FileLines, paint: Paint): string | undefined {
  if (result.notUnderstood.length === 0) return undefined;
  const rows = result.notUnderstood.map(({ span, message }) => {
    const { line, column } = lines.of(span.file).placeOf(span.start);
    return `  ${paint("place", `${span.file}:${line}:${column}`)}  ${message}`;
  });
  return [paint("file", "Not understood, so not checked"), ...rows].join("\n");
}

function summaryAsText(result: CheckResult, paint: Paint): string {
  const summary = countFindings(result);
  const role = summary.errors > 0 ? "error" : summary.warnings > 0 ? "warning" : "good";
  return `${paint(role, summaryInWords(summary))} ${basisInWords(summary)}`;
}

function byFile(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const group = groups.get(finding.span.file);
    if (group === undefined) groups.set(finding.span.file, [finding]);
    else group.push(finding);
  }
  return groups;
}
