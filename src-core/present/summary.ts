import type { CheckResult } from "../check-result.ts";

/** How many findings of each severity stand in a result, and how many files were read for it. */
export interface Summary {
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
  readonly files: number;
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

/** "in 1 file read", "in 2 files read, and 3 accepted by the baseline". */
export function filesReadInWords({ files, accepted }: Summary): string {
  const read = `in ${files === 1 ? "1 file" : `${files} files`} read`;
  return accepted === undefined ? read : `${read}, and ${accepted} accepted by the baseline`;
}

/** "1 file", "2 files"; undefined for none. */
function amount(count: number, noun: string): string | undefined {
  if (count === 0) return undefined;
  return count === 1 ? `1 ${noun}` : `${count} ${noun}s`;
}
