import type { CheckResult } from "../../check-result.ts";
import type { Finding, Severity, Span } from "../../finding.ts";
import { boundsInWords } from "../details.ts";
import type { FileLines } from "../line-index.ts";
import { basisInWords, countFindings, summaryInWords } from "../summary.ts";

/** What the runner calls the levels. */
const commands: Readonly<Record<Severity, "error" | "warning" | "notice">> = {
  error: "error",
  warning: "warning",
  info: "notice",
};

/**
 * The result as workflow commands, which a CI runner takes out of a step's output and shows at the lines of code that
 * they name; what stands between them is log. `::error file=..,line=..,endLine=..,col=..,endColumn=..,title=..::message`
 * and its escapes are those of the runner's documentation and of its toolkit (from memory). Columns are told only of what
 * lies in one line, as the runner's interface asks (from memory); the end column is one behind the last character, which
 * is common practice without a source.
 */
export function checkAsWorkflowCommands(result: CheckResult, lines: FileLines): string {
  const findings = result.findings.map((finding) =>
    command(
      commands[finding.severity],
      { ...placeOf(finding.span, lines), title: finding.rule },
      inWords(finding),
    ),
  );
  const gaps = result.notUnderstood.map(({ span, message }) =>
    command("notice", { ...placeOf(span, lines), title: "not understood, so not checked" }, message),
  );
  const summary = countFindings(result);
  const last = `${summaryInWords(summary)} ${basisInWords(summary)}`;
  return [...findings, ...gaps, last, ""].join("\n");
}

function inWords(finding: Finding): string {
  const fixes = finding.fixes.map(({ title }) => `fix ${title}`);
  return [finding.message, ...boundsInWords(finding), ...fixes].join("\n");
}

type Properties = Readonly<Record<string, string | number>>;

function placeOf({ file, start, end }: Span, lines: FileLines): Properties {
  const index = lines.of(file);
  const from = index.placeOf(start);
  const to = index.placeOf(end);
  const place = { file, line: from.line, endLine: to.line };
  return from.line === to.line ? { ...place, col: from.column, endColumn: to.column } : place;
}

function command(name: string, properties: Properties, message: string): string {
  const written = Object.entries(properties).map(([key, value]) => `${key}=${propertyText(String(value))}`);
  return `::${name} ${written.join(",")}::${messageText(message)}`;
}

/** A command is one line; the sign that escapes is itself escaped first. */
function messageText(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

/** In properties colon and comma have a meaning as well. */
function propertyText(text: string): string {
  return messageText(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
