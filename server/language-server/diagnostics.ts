import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import type { CheckResult } from "../../src-core/check-result.ts";
import type { Finding, Severity, Span } from "../../src-core/finding.ts";
import type { TrialFailure } from "../../src-core/trial-details.ts";
import type { Positions } from "./positions.ts";
import type { ProjectDiagnostics } from "./shown-diagnostics.ts";
import { uriOfPath } from "./uri-paths.ts";

/** How the editor tells whose diagnostics these are. */
const source = "edgewise";

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
};

/** The URI of a rule's page; undefined for a client that shows none. */
export type PageUriOf = (rule: string) => string | undefined;

/** A result's diagnostics by file, and why trying it failed; files that were read and have none are there with an empty list. */
export function diagnosticsByFile(
  result: CheckResult,
  failure: TrialFailure | undefined,
  positions: Positions,
  pageUriOf: PageUriOf,
): ProjectDiagnostics {
  const byFile = new Map<string, Diagnostic[]>(result.files.map((file) => [file, []]));
  for (const { file, diagnostic } of [
    ...diagnosticsOf(result, positions, pageUriOf),
    ...notTried(result, failure, positions),
  ]) {
    const diagnostics = byFile.get(file) ?? [];
    diagnostics.push(diagnostic);
    byFile.set(file, diagnostics);
  }
  return byFile;
}

/** All that a result says, in the order in which an editor should list it. */
function diagnosticsOf(result: CheckResult, positions: Positions, pageUriOf: PageUriOf): readonly Placed[] {
  return [
    ...result.settingsFaults.map(({ span, message }) => ({
      file: span.file,
      diagnostic: { ...plainDiagnostic(span, message, positions), severity: DiagnosticSeverity.Error },
    })),
    ...result.findings.map((finding) => ({
      file: finding.span.file,
      diagnostic: diagnosticOf(finding, positions, pageUriOf),
    })),
    // Half a line that is being typed is not understood either: no more than a hint.
    ...result.notUnderstood.map(({ span, message }) => ({
      file: span.file,
      diagnostic: { ...plainDiagnostic(span, message, positions), severity: DiagnosticSeverity.Hint },
    })),
  ];
}

/** Said at the head of the project's first file, as there is no telling which function is to blame. */
function notTried(
  { files: [file] }: CheckResult,
  failure: TrialFailure | undefined,
  positions: Positions,
): readonly Placed[] {
  if (file === undefined || failure === undefined) return [];
  const message = `the firmware could not be tried: ${failure.why}; it is tried again after the next edit`;
  const diagnostic = plainDiagnostic({ file, start: 0, end: 0 }, message, positions);
  return [{ file, diagnostic: { ...diagnostic, severity: DiagnosticSeverity.Information } }];
}

interface Placed {
  readonly file: string;
  readonly diagnostic: Diagnostic;
}

function plainDiagnostic(span: Span, message: string, positions: Positions): Diagnostic {
  return { range: positions.rangeOf(span), source, message };
}

function diagnosticOf(finding: Finding, positions: Positions, pageUriOf: PageUriOf): Diagnostic {
  const href = pageUriOf(finding.rule);
  return {
    ...plainDiagnostic(finding.span, finding.message, positions),
    severity: severities[finding.severity],
    code: finding.rule,
    ...(href === undefined ? {} : { codeDescription: { href } }),
    message: finding.source === undefined ? finding.message : `${finding.message}\n(${finding.source})`,
    relatedInformation: finding.related.map(({ span, message }) => ({
      location: { uri: uriOfPath(span.file), range: positions.rangeOf(span) },
      message,
    })),
  };
}
