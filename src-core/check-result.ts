import type { Finding, Fix, NotUnderstood, Span } from "./finding.ts";

/** What checking one project, or several at once, gives: plain data for the front ends. */
export interface CheckResult {
  /** By file, then by place. */
  readonly findings: readonly Finding[];
  readonly notUnderstood: readonly NotUnderstood[];
  /** Faults of the project's edgewise.json; what it says rightly was followed all the same. */
  readonly settingsFaults: readonly SettingsFault[];
  /** Workspace files that were read, headers and edgewise.json included, each once. */
  readonly files: readonly string[];
  /** Rules that were checked to the end: where they found nothing, there is nothing. */
  readonly checked: readonly string[];
  /** How many times the firmware was run whole; undefined where it was not to be run. */
  readonly runs?: number;
  /** How many findings a baseline left out; undefined without one. */
  readonly accepted?: number;
}

export interface SettingsFault {
  readonly span: Span;
  /** What is wrong and what would be right. */
  readonly message: string;
  readonly fix: Fix | undefined;
}
