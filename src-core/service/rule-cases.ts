import type { CheckResult } from "../check-result.ts";
import { ruleOf } from "../checks/registry.ts";
import { hostOfFiles } from "../reader/source-host.ts";
import type { RuleDescription } from "../rule-description.ts";
import { ruleIds } from "../rule-ids.ts";
import { createService } from "./create-service.ts";
import type { Grammar } from "./grammar.ts";

/** File name to text. */
type Files = Readonly<Record<string, string>>;

/** A rule with its two examples and what a check says of the wrong one. */
export interface RuleCase {
  readonly rule: RuleDescription;
  readonly wrong: Files;
  readonly right: Files;
  readonly said: CheckResult;
}

/** Every rule that is checked, in the order of the catalogue; its wrong example is a project of its own. */
export function ruleCases(grammar: Grammar): readonly RuleCase[] {
  return ruleIds.flatMap((name): readonly RuleCase[] => {
    const found = ruleOf(name);
    if (found === undefined) return [];
    const { id, title, severity, why, source, wrong, right } = found;
    return [{ rule: { id, title, severity, why, source }, wrong, right, said: checked(wrong, grammar) }];
  });
}

function checked(files: Files, grammar: Grammar): CheckResult {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "" });
  const [project] = service.projectsAt(".");
  if (project === undefined) throw new Error("an example holds no project");
  service.runWhole(project.id);
  return service.check(project.id);
}
