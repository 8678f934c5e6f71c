import type { Facts } from "../facts/facts.ts";
import type { Finding, NotUnderstood, RuleLevel, Span } from "../finding.ts";
import { ruleOf, rules } from "./registry.ts";
import type { Draft, Rule, RuleText, Trials } from "./rule.ts";
import { explainedElsewhere, withoutConsequences } from "./runs/consequences.ts";

export { consequencesOf } from "./runs/consequences.ts";

/** What a run of the rules gives. */
export interface Checked {
  /** By file, then by place, then by rule; no two alike. */
  readonly findings: readonly Finding[];
  /** Rules that could not finish. */
  readonly notUnderstood: readonly NotUnderstood[];
}

/**
 * Runs `among` (all rules unless given) over the text, as far as they look at it. `levels` maps rule ids to the level the
 * project wants instead of the rule's own; `off` leaves the rule out. Never throws.
 */
export function runRules(
  facts: Facts,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Rule[] = rules,
): Checked {
  return checked(facts, levels, among, (rule) => rule.check?.(facts));
}

/** The same for what running the firmware showed. */
export function judgeTrials(
  facts: Facts,
  trials: Trials,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Rule[] = rules,
): Checked {
  const runs = withoutConsequences(trials.runs);
  const { findings, notUnderstood } = checked(facts, levels, among, (rule) => {
    // What a part shows by itself is known better.
    const ofParts = [...(rule.judgeParts?.(trials.reports) ?? [])];
    return ofParts.length > 0 ? ofParts : rule.judge?.({ ...trials, runs });
  });
  return {
    findings,
    notUnderstood: [...trials.reports.flatMap((trial) => trial.notUnderstood), ...notUnderstood],
  };
}

/**
 * Findings of both, in order. What whole runs showed of a fault that is told already is left out: what follows from another
 * fault, and what the same rule tells of the text. Where that is allowed, it is left out at its own places alone, as elsewhere it
 * may be another fault.
 */
export function together(
  read: Checked,
  tried: Checked,
  isAllowed: (finding: Finding) => boolean = () => false,
): Checked {
  const [ofRuns, ofParts] = split(tried.findings, ({ rule }) => ruleOf(rule)?.judgeParts === undefined);
  const told = [...read.findings, ...ofParts];
  const explained = new Set(told.flatMap(({ rule }) => explainedElsewhere(rule)));
  const isTold = (found: Finding): boolean =>
    told.some(
      (each) => each.rule === found.rule && (!isAllowed(each) || placesOf(each).some(touches(found.span))),
    );
  const left = ofRuns.filter((found) => !explained.has(found.rule) && !isTold(found));
  return {
    findings: inOrder([...told, ...left]),
    notUnderstood: [...read.notUnderstood, ...tried.notUnderstood],
  };
}

function placesOf({ span, related }: Finding): readonly Span[] {
  return [span, ...related.map((one) => one.span)];
}

function touches(one: Span): (other: Span) => boolean {
  return (other) => one.file === other.file && one.start < other.end && other.start < one.end;
}

function split<Item>(
  items: readonly Item[],
  belongs: (item: Item) => boolean,
): readonly [yes: readonly Item[], no: readonly Item[]] {
  return [items.filter(belongs), items.filter((item) => !belongs(item))];
}

function checked(
  facts: Facts,
  levels: ReadonlyMap<string, RuleLevel>,
  among: readonly Rule[],
  draftsOf: (rule: Rule) => Iterable<Draft> | undefined,
): Checked {
  const findings: Finding[] = [];
  const notUnderstood: NotUnderstood[] = [];
  for (const rule of among) {
    const severity = levels.get(rule.id) ?? rule.severity;
    if (severity === "off") continue;
    try {
      for (const draft of draftsOf(rule) ?? []) findings.push({ rule: rule.id, severity, ...draft });
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
