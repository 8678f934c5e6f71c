import type { Severity } from "../../finding.ts";
import { quantities } from "../../model/quantities.ts";
import { type Entry, texts } from "./topic.ts";

/** What a rule says of itself. */
export interface RuleWords {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  readonly why: string;
  readonly source: string;
}

export function ruleEntries(rules: readonly RuleWords[]): readonly Entry[] {
  return rules.map(({ id, title, severity, why, source }) => ({
    words: [id],
    topic: () => ({
      name: id,
      kind: "rule",
      title,
      parts: texts(
        why,
        `Level: ${severity}, unless \`rules\` of edgewise.json says another.`,
        `To accept one finding, write above its line: \`// @wire allow ${id} because "..."\``,
        source === "" ? undefined : `Source: ${source}.`,
      ),
      related: quantities.filter(({ rules: checked }) => checked.includes(id)).map((each) => each.id),
    }),
  }));
}
