import type { Facts } from "../facts/facts.ts";
import type { Finding, Severity } from "../finding.ts";
import type { FirmwareRun } from "../firmware-run.ts";
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

/** Finds what can be seen in the text; must not wait for a run. */
interface TextRule {
  check(facts: Facts): Iterable<Draft>;
}

/** Finds what shows when encoders and decoders are run by themselves. */
interface PartsRule {
  judgeParts(reports: readonly ReportTrial[]): Iterable<Draft>;
}

/** Finds what shows when the whole firmware is run. */
interface RunRule {
  judge(trials: Trials): Iterable<Draft>;
}

interface AllWays extends TextRule, PartsRule, RunRule {}

/** One rule of the catalogue: faults that the text shows, that parts show or that a run shows, in at least one way. */
export type Rule = RuleText & Partial<AllWays> & (TextRule | PartsRule | RunRule);

/** What came of running the firmware or parts of it. */
export interface Trials {
  readonly reports: readonly ReportTrial[];
  /** Runs of the whole firmware; empty where it could not be run, or nobody wanted it. */
  readonly runs: readonly FirmwareRun[];
}
