import type { Finding, RuleLevel, Span } from "../../finding.ts";
import type { Allowance } from "../attachment/allowance.ts";

export interface AllowOptions {
  /** Rules that were checked. An `allow` of any other rule may be right, and nothing is said of it. */
  readonly checked: ReadonlySet<string>;
  /** Level of `note/unattached`. */
  readonly unattached: RuleLevel;
}

/**
 * Leaves out what is allowed: findings of the allowed rule that touch the region. An `allow` that allowed
 * nothing is itself a finding of `note/unattached`: it has nothing to belong to any more, and would one day hide
 * a new fault. The findings come in order of file, place and rule.
 */
export function applyAllows(
  findings: readonly Finding[],
  allowances: readonly Allowance[],
  options: AllowOptions,
): readonly Finding[] {
  const used = new Set<Allowance>();
  const kept = findings.filter((finding) => {
    const covering = allowancesOf(finding, allowances);
    for (const allowance of covering) used.add(allowance);
    return covering.length === 0;
  });
  const severity = options.unattached;
  if (severity === "off") return kept;
  for (const allowance of allowances) {
    const { rule } = allowance.note;
    if (used.has(allowance) || !options.checked.has(rule.value)) continue;
    kept.push({
      rule: "note/unattached",
      severity,
      span: allowance.note.span,
      message: `there is nothing to allow: \`${rule.value}\` finds no fault here; take the note out`,
      related: [],
      fixes: [{ title: "Take the note out", edits: [{ span: removable(allowance), text: "" }] }],
    });
  }
  return kept.sort(inOrder);
}

/** Those that allow this finding. */
export function allowancesOf(
  finding: Pick<Finding, "rule" | "span">,
  allowances: readonly Allowance[],
): readonly Allowance[] {
  return allowances.filter((allowance) => covers(allowance, finding));
}

/** By file, then by place, then by rule. */
function inOrder(a: Finding, b: Finding): number {
  const files = a.span.file < b.span.file ? -1 : a.span.file > b.span.file ? 1 : 0;
  const rules = a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0;
  return files || a.span.start - b.span.start || a.span.end - b.span.end || rules;
}

/** The note, or the whole comment where it holds nothing else. */
function removable({ note }: Allowance): Span {
  const { comment, span } = note;
  const before = comment.text.slice(0, span.start - comment.start);
  const rest = before + comment.text.slice(span.end - comment.start);
  if (!/^[\s/*!]*$/.test(rest)) return span;
  return { file: comment.file, start: comment.start, end: comment.end };
}

function covers({ note, region }: Allowance, { rule, span }: Pick<Finding, "rule" | "span">): boolean {
  if (rule !== note.rule.value || span.file !== region.file) return false;
  return span.start < region.end && (span.end > region.start || span.start === region.start);
}
