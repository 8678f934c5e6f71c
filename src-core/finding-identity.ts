import type { Finding } from "./finding.ts";

/** What a finding is known again by after the code around it has moved: not its line number. */
export interface FindingIdentity {
  readonly rule: string;
  readonly file: string;
  /** The line that it begins on, each run of white space as one space, none at the ends. */
  readonly text: string;
  /** 1 for the first of several that are alike in all that, in the order of the file. */
  readonly occurrence: number;
}

/** The text of the line that a finding begins on. */
export type LineOfFinding = (finding: Finding) => string;

/** The identity of each finding, in their order. */
export function identitiesOf(
  findings: readonly Finding[],
  lineOf: LineOfFinding,
): readonly FindingIdentity[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const { rule, span } = finding;
    const text = lineOf(finding).trim().replace(/\s+/g, " ");
    const key = JSON.stringify([rule, span.file, text]);
    const occurrence = (seen.get(key) ?? 0) + 1;
    seen.set(key, occurrence);
    return { rule, file: span.file, text, occurrence };
  });
}
