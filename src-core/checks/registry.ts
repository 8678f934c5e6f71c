import type { Facts } from "../facts/facts.ts";
import type { Finding, NotUnderstood, RuleLevel } from "../finding.ts";
import { clockUnknown } from "./board/clock-unknown.ts";
import { delayInIsr } from "./board/delay-in-isr.ts";
import { divisorRange } from "./board/divisor-range.ts";
import { integerOverflow } from "./board/integer-overflow.ts";
import { pinConflict } from "./board/pin-conflict.ts";
import { pinNoInterrupt } from "./board/pin-no-interrupt.ts";
import { sharedNotVolatile } from "./board/shared-not-volatile.ts";
import { mismatch } from "./note/mismatch.ts";
import { syntax } from "./note/syntax.ts";
import { unattached } from "./note/unattached.ts";
import { unknownName } from "./note/unknown-name.ts";
import { argumentRange } from "./ps2/argument-range.ts";
import { commandUnknown } from "./ps2/command-unknown.ts";
import { lineDrivenHigh } from "./ps2/line-driven-high.ts";
import { noPullUp } from "./ps2/no-pullup.ts";
import { reportingNotEnabled } from "./ps2/reporting-not-enabled.ts";
import { requestHoldShort } from "./ps2/request-hold-short.ts";
import { resetWaitShort } from "./ps2/reset-wait-short.ts";
import { wheelSequence } from "./ps2/wheel-sequence.ts";
import { buttonMap } from "./report/button-map.ts";
import { clipMissing } from "./report/clip-missing.ts";
import { layout } from "./report/layout.ts";
import { length } from "./report/length.ts";
import { signLost } from "./report/sign-lost.ts";
import { syncBit } from "./report/sync-bit.ts";
import { yDirection } from "./report/y-direction.ts";
import type { Draft, Rule, RuleText, TrialRule, Trials } from "./rule.ts";
import { baudError } from "./serial/baud-error.ts";
import { bitTime } from "./serial/bit-time.ts";
import { lineFormat } from "./serial/line-format.ts";

/** Rules over the text, by group; `rule-ids.ts` has the whole catalogue. A new rule is a new file and a line here. */
export const rules: readonly Rule[] = [
  clockUnknown,
  divisorRange,
  integerOverflow,
  pinNoInterrupt,
  pinConflict,
  sharedNotVolatile,
  delayInIsr,
  baudError,
  lineFormat,
  bitTime,
  requestHoldShort,
  lineDrivenHigh,
  noPullUp,
  commandUnknown,
  argumentRange,
  wheelSequence,
  reportingNotEnabled,
  resetWaitShort,
  syntax,
  unknownName,
  mismatch,
  unattached,
];

/** Rules over what a run of the firmware shows. */
export const trialRules: readonly TrialRule[] = [
  layout,
  syncBit,
  yDirection,
  signLost,
  clipMissing,
  buttonMap,
  length,
];

/** Every rule that this version checks. */
export const allRules: readonly RuleText[] = [...rules, ...trialRules];

/** What a run of the rules gives. */
export interface Checked {
  /** By file, then by place, then by rule; no two alike. */
  readonly findings: readonly Finding[];
  /** Rules that could not finish. */
  readonly notUnderstood: readonly NotUnderstood[];
}

/** The rule with this id, or undefined. */
export function ruleOf(id: string): RuleText | undefined {
  return allRules.find((rule) => rule.id === id);
}

/**
 * Runs `among` (all rules over the text unless given) over `facts`. `levels` maps rule ids to the level the project
 * wants instead of the rule's own; `off` leaves the rule out. Never throws.
 */
export function runRules(
  facts: Facts,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Rule[] = rules,
): Checked {
  return checked(facts, levels, among, (rule) => rule.check(facts));
}

/** The same for what running the firmware showed. */
export function runTrialRules(
  facts: Facts,
  trials: Trials,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly TrialRule[] = trialRules,
): Checked {
  const { findings, notUnderstood } = checked(facts, levels, among, (rule) => rule.judge(trials));
  return {
    findings,
    notUnderstood: [...trials.reports.flatMap((trial) => trial.notUnderstood), ...notUnderstood],
  };
}

/** Findings of both, in order. */
export function together(one: Checked, other: Checked): Checked {
  return {
    findings: inOrder([...one.findings, ...other.findings]),
    notUnderstood: [...one.notUnderstood, ...other.notUnderstood],
  };
}

function checked<Kind extends RuleText>(
  facts: Facts,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Kind[],
  draftsOf: (rule: Kind) => Iterable<Draft>,
): Checked {
  const findings: Finding[] = [];
  const notUnderstood: NotUnderstood[] = [];
  for (const rule of among) {
    const severity = levels.get(rule.id) ?? rule.severity;
    if (severity === "off") continue;
    try {
      for (const draft of draftsOf(rule)) findings.push({ rule: rule.id, severity, ...draft });
    } catch (error) {
      notUnderstood.push(unfinished(rule, facts, error));
    }
  }
  return { findings: inOrder(withoutDoubles(findings)), notUnderstood };
}

function unfinished(rule: RuleText, facts: Facts, error: unknown): NotUnderstood {
  const reason = error instanceof Error ? error.message : String(error);
  const file = facts.program.units[0]?.mains[0] ?? "";
  return { span: { file, start: 0, end: 0 }, message: `${rule.id} could not be checked: ${reason}` };
}

function withoutDoubles(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const { file, start, end } = finding.span;
    const key = JSON.stringify([finding.rule, file, start, end, finding.message]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function inOrder(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      compareText(a.span.file, b.span.file) ||
      a.span.start - b.span.start ||
      a.span.end - b.span.end ||
      compareText(a.rule, b.rule),
  );
}

/** By code unit, so that the order does not depend on the locale. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
