import type { CheckResult } from "../check-result.ts";

/** How many findings of each severity stand in a result, and how many files were read for it. */
export interface Summary {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
  readonly files: number;
  /** How many times the firmware was run whole; undefined where it was not to be run. */
  readonly runs?: number;
  /** How many findings a baseline left out; undefined without one. */
  readonly accepted?: number;
}

export function countFindings(result: CheckResult): Summary {
  const count = (severity: string) =>
    result.findings.filter((finding) => finding.severity === severity).length;
  return {
    errors: count("error"),
    warnings: count("warning"),
    infos: count("info"),
    files: result.files.length,
    ...(result.runs === undefined ? {} : { runs: result.runs }),
    ...(result.accepted === undefined ? {} : { accepted: result.accepted }),
  };
}

/** "2 errors, 1 warning"; "no findings". */
export function summaryInWords(summary: Summary): string {
  const parts = [
    amount(summary.errors, "error"),
    amount(summary.warnings, "warning"),
    amount(summary.infos, "info"),
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? "no findings" : parts.join(", ");
}

/** "in 1 file read", "in 2 files read and 9 runs, and 3 accepted by the baseline". */
export function basisInWords({ files, runs, accepted }: Summary): string {
  const ran = runs === undefined ? "" : ` and ${amount(runs, "run") ?? "no run"}`;
  const read = `in ${files === 1 ? "1 file" : `${files} files`} read${ran}`;
  return accepted === undefined ? read : `${read}, and ${accepted} accepted by the baseline`;
}

/** "1 file", "2 files"; undefined for none. */
function amount(count: number, noun: string): string | undefined {
  if (count === 0) return undefined;
  return count === 1 ? `1 ${noun}` : `${count} ${noun}s`;
}
