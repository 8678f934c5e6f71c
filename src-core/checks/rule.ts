import type { Facts } from "../facts/facts.ts";
import type { Finding, Severity } from "../finding.ts";
import type { ReportTrial } from "../reports/report-trial.ts";

/** A firmware snippet that a rule is tested with: file name to text, edgewise.json included where it needs one. */
export type Example = Readonly<Record<string, string>>;

/** What a rule finds; the registry adds the rule's id and level. */
export type Draft = Omit<Finding, "rule" | "severity">;

/** What a rule says of itself. Its id is a contract: settings, `allow`, SARIF, docs and tests use it. */
export interface RuleText {
  /** `group/name`. */
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  /** Why it matters to someone who plugs the adapter in, in two or three sentences. */
  readonly why: string;
  /** Gives this rule's finding and no other. */
  readonly wrong: Example;
  /** Gives no finding. */
  readonly right: Example;
  /** Where the limit comes from, as readers should see it. */
  readonly source: string;
}

/** A rule whose faults can be seen in the text. */
export interface Rule extends RuleText {
  check(facts: Facts): Iterable<Draft>;
}

/** A rule whose faults show when the firmware is run. */
export interface TrialRule extends RuleText {
  judge(trials: Trials): Iterable<Draft>;
}

/** What came of running the firmware or parts of it. */
export interface Trials {
  readonly reports: readonly ReportTrial[];
}
