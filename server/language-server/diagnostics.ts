import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver/node";
import type { CheckResult } from "../../src-core/check-result.ts";
import type { Finding, Severity } from "../../src-core/finding.ts";
import type { Positions } from "./positions.ts";
import { uriOfPath } from "./uri-paths.ts";

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/** A result's diagnostics by file; files that were read and have none are there with an empty list. */
export function diagnosticsByFile(
  result: CheckResult,
  positions: Positions,
): ReadonlyMap<string, readonly Diagnostic[]> {
  const byFile = new Map<string, Diagnostic[]>(result.files.map((file) => [file, []]));
  for (const finding of result.findings) {
    const { file } = finding.span;
    const diagnostics = byFile.get(file) ?? [];
    diagnostics.push(diagnosticOf(finding, positions));
    byFile.set(file, diagnostics);
  }
  return byFile;
}

function diagnosticOf(finding: Finding, positions: Positions): Diagnostic {
  return {
    range: positions.rangeOf(finding.span),
    severity: severities[finding.severity],
    code: finding.rule,
    source: "edgewise",
    message: finding.source === undefined ? finding.message : `${finding.message}\n(${finding.source})`,
    relatedInformation: finding.related.map(({ span, message }) => ({
      location: { uri: uriOfPath(span.file), range: positions.rangeOf(span) },
      message,
    })),
  };
}
