import { rules } from "../checks/registry.ts";
import { runRules } from "../checks/run-rules.ts";
import type { Facts } from "../facts/facts.ts";
import type { Finding, RuleLevel } from "../finding.ts";
import type { Settings } from "../notes/settings/settings.ts";

/**
 * Rules that edgewise.json turns off though they find nothing: `note/unattached`, as an `allow` that allows nothing is. Only
 * of rules that the text alone answers, for the others were not asked.
 */
export function idleLevels(facts: Facts, settings: Settings, unattached: RuleLevel): readonly Finding[] {
  if (unattached === "off") return [];
  const off = rules.filter(
    (rule) => (rule.judge ?? rule.judgeParts) === undefined && settings.rules.get(rule.id)?.value === "off",
  );
  if (off.length === 0) return [];
  const { findings, notUnderstood } = runRules(facts, new Map(), off);
  if (notUnderstood.length > 0) return [];
  return off.flatMap(({ id }): readonly Finding[] => {
    const said = settings.rules.get(id);
    if (said === undefined || findings.some(({ rule }) => rule === id)) return [];
    const message = `there is nothing to turn off: \`${id}\` finds no fault in this firmware; take it out of \`rules\``;
    return [
      { rule: "note/unattached", severity: unattached, span: said.span, message, related: [], fixes: [] },
    ];
  });
}
