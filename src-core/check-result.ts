import type { Finding, NotUnderstood } from "./finding.ts";

/** What checking one project, or several at once, gives: plain data for the front ends. */
export interface CheckResult {
  /** By file, then by place. */
  readonly findings: readonly Finding[];
  readonly notUnderstood: readonly NotUnderstood[];
  /** Workspace files that were read, headers included, each once. */
  readonly files: readonly string[];
}
