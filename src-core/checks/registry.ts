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
import type { Rule } from "./rule.ts";
import { baudError } from "./serial/baud-error.ts";
import { bitTime } from "./serial/bit-time.ts";
import { lineFormat } from "./serial/line-format.ts";

/** Every rule that this version checks, by group; `rule-ids.ts` has the whole catalogue. A new rule is a new file and a line here. */
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

/** What a run of the rules gives. */
export interface Checked {
  /** By file, then by place, then by rule; no two alike. */
  readonly findings: readonly Finding[];
  /** Rules that could not finish. */
  readonly notUnderstood: readonly NotUnderstood[];
}

/** The rule with this id, or undefined. */
export function ruleOf(id: string): Rule | undefined {
  return rules.find((rule) => rule.id === id);
}

/**
 * Runs `among` (all rules unless given) over `facts`. `levels` maps rule ids to the level the project wants
 * instead of the rule's own; `off` leaves the rule out. Never throws.
 */
export function runRules(
  facts: Facts,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Rule[] = rules,
): Checked {
  const findings: Finding[] = [];
  const notUnderstood: NotUnderstood[] = [];
  for (const rule of among) {
    const severity = levels.get(rule.id) ?? rule.severity;
    if (severity === "off") continue;
    try {
      for (const draft of rule.check(facts)) findings.push({ rule: rule.id, severity, ...draft });
    } catch (error) {
      notUnderstood.push(unfinished(rule, facts, error));
    }
  }
  return { findings: inOrder(withoutDoubles(findings)), notUnderstood };
}

function unfinished(rule: Rule, facts: Facts, error: unknown): NotUnderstood {
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
