import type { Severity } from "./finding.ts";

/** What front ends tell of a rule: plain data. */
export interface RuleDescription {
  /** `group/name`. */
  readonly id: string;
  readonly title: string;
  /** Its level unless a project wants another. */
  readonly severity: Severity;
  /** Why it matters to someone who plugs the adapter in. */
  readonly why: string;
  /** Where its limit comes from. */
  readonly source: string;
}

/** Where the page of a rule lies in the package, from the package's root on. */
export function pageOfRule(id: string): string {
  return `docs/rules/${id}.md`;
}
