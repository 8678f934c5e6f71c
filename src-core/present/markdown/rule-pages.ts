import { pageOfRule } from "../../rule-description.ts";
import { type RulePageContent, ruleIndex, rulePage } from "./rule-page.ts";

/** Where the list of all rules lies in the package. */
const indexPage = "docs/rules/README.md";

/** Every page about rules: its path from the package's root on to its text. */
export function rulePages(contents: readonly RulePageContent[]): ReadonlyMap<string, string> {
  return new Map([
    [indexPage, ruleIndex(contents.map(({ rule }) => rule))],
    ...contents.map((content): [string, string] => [pageOfRule(content.rule.id), rulePage(content)]),
  ]);
}
