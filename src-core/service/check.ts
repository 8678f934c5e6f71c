import type { CheckResult, SettingsFault } from "../check-result.ts";
import { ruleOf, rules, runRules } from "../checks/registry.ts";
import type { Rule } from "../checks/rule.ts";
import type { NotUnderstood, RuleLevel } from "../finding.ts";
import { applyAllows } from "../notes/allow/apply-allows.ts";
import type { SettingsProblem } from "../notes/settings/settings.ts";
import type { Project } from "../project/project.ts";
import type { ProjectReading } from "./project-reading.ts";

/** Runs the rules over what was read, as the project's settings and notes want them run. */
export function checkReading({ project, facts, files }: ProjectReading): CheckResult {
  const levels = new Map<string, RuleLevel>(
    [...project.settings.rules].map(([rule, said]) => [rule, said.value]),
  );
  const levelOf = ({ id, severity }: Rule): RuleLevel => levels.get(id) ?? severity;
  const { findings, notUnderstood } = runRules(facts, levels);
  const unattached = ruleOf("note/unattached");
  return {
    findings: applyAllows(findings, facts.notes.allowances, {
      checked: new Set(rules.filter((rule) => levelOf(rule) !== "off").map(({ id }) => id)),
      unattached: unattached === undefined ? "off" : levelOf(unattached),
    }),
    notUnderstood: [...facts.program.problems, ...notKnown(facts.ps2.notKnown, project), ...notUnderstood],
    settingsFaults: project.problems.map(settingsFault),
    files: [...files.keys(), ...settingsFile(project)],
  };
}

/** What has no place of its own is said at the settings, where the answer can be given, or else first of all. */
function notKnown(
  items: readonly { readonly span: NotUnderstood["span"] | undefined; readonly message: string }[],
  project: Project,
): readonly NotUnderstood[] {
  const file = project.settings.file ?? project.units[0]?.mains[0] ?? project.root;
  return items.map(({ span, message }) => ({ span: span ?? { file, start: 0, end: 0 }, message }));
}

function settingsFault({ span, message, suggestion }: SettingsProblem): SettingsFault {
  if (suggestion === undefined) return { span, message, fix: undefined };
  return { span, message, fix: { title: `Write ${suggestion}`, edits: [{ span, text: suggestion }] } };
}

function settingsFile({ settings }: Project): readonly string[] {
  return settings.file === undefined ? [] : [settings.file];
}
