import type { Finding, RuleLevel } from "../../finding.ts";
import type { Allowance } from "../attachment/allowance.ts";
import { replacement } from "../note-problem.ts";

/** Levels that the project's settings give; a rule without one has its own. */
export type Levels = ReadonlyMap<string, RuleLevel>;

/**
 * Leaves out what is allowed: findings of the allowed rule that touch the region. An `allow` that allowed
 * nothing is itself a finding, `note/unattached` at the level `unattached`, unless its rule is off: it
 * has nothing to belong to any more, and would one day hide a new fault.
 */
export function applyAllows(
  findings: readonly Finding[],
  allowances: readonly Allowance[],
  levels: Levels,
  unattached: RuleLevel,
): readonly Finding[] {
  const used = new Set<Allowance>();
  const kept = findings.filter((finding) => {
    const covering = allowances.filter((allowance) => covers(allowance, finding));
    for (const allowance of covering) used.add(allowance);
    return covering.length === 0;
  });
  const severity = levels.get("note/unattached") ?? unattached;
  if (severity === "off") return kept;
  for (const allowance of allowances) {
    const { rule } = allowance.note;
    if (used.has(allowance) || levels.get(rule.value) === "off") continue;
    kept.push({
      rule: "note/unattached",
      severity,
      span: allowance.note.span,
      message: `there is nothing to allow: \`${rule.value}\` finds no fault here; take the note out`,
      related: [],
      fixes: [{ ...replacement(allowance.note.span, ""), title: "Take the note out" }],
    });
  }
  return kept.sort(inOrder);
}

/** By file, then by place, then by rule. */
function inOrder(a: Finding, b: Finding): number {
  const files = a.span.file < b.span.file ? -1 : a.span.file > b.span.file ? 1 : 0;
  const rules = a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0;
  return files || a.span.start - b.span.start || a.span.end - b.span.end || rules;
}

function covers({ note, region }: Allowance, { rule, span }: Finding): boolean {
  if (rule !== note.rule.value || span.file !== region.file) return false;
  return span.start < region.end && (span.end > region.start || span.start === region.start);
}
