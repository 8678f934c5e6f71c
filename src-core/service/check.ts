import type { CheckResult, SettingsFault } from "../check-result.ts";
import { ruleOf, rules } from "../checks/registry.ts";
import type { RuleText } from "../checks/rule.ts";
import { judgeTrials, runRules, together } from "../checks/run-rules.ts";
import type { NotUnderstood, RuleLevel } from "../finding.ts";
import { applyAllows } from "../notes/allow/apply-allows.ts";
import type { SettingsProblem } from "../notes/settings/settings.ts";
import type { Project } from "../project/project.ts";
import { tryReports } from "../reports/try-reports.ts";
import { proposeEncoders } from "../reports/unnoted/propose-encoders.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";

/** Runs the rules over what was read, as the project's settings and notes want them run; `tried` is added. */
export function checkReading(reading: ProjectReading, tried: TrialResult | undefined): CheckResult {
  const { project, facts, files } = reading;
  const levels = levelsOf(project);
  const levelOf = ({ id, severity }: RuleText): RuleLevel => levels.get(id) ?? severity;
  const read = runRules(facts, levels);
  const { findings, notUnderstood } = tried === undefined ? read : together(read, tried);
  const unattached = ruleOf("note/unattached");
  // A rule that looks at a run has not said all before there was one.
  const ran = rules.filter((rule) => rule.judge === undefined || tried?.whole === true);
  const checked = ran.filter((rule) => levelOf(rule) !== "off").map(({ id }) => id);
  return {
    findings: applyAllows(findings, facts.notes.allowances, {
      checked: new Set(checked),
      unattached: unattached === undefined ? "off" : levelOf(unattached),
    }),
    notUnderstood: [
      ...facts.program.problems,
      ...notKnown(facts.ps2.notKnown, project),
      ...notUnderstood,
      ...(tried?.proposals ?? []).map(({ span, reason, note }) => ({
        span,
        message: `${reason}; to have it checked, write above it: ${note}`,
      })),
    ],
    settingsFaults: project.problems.map(settingsFault),
    files: [...files.keys(), ...settingsFile(project)],
    checked,
  };
}

/** Runs what can be run of what was read; undefined when cancelled. */
export function tryReading(
  { project, facts }: ProjectReading,
  cancelled: (() => boolean) | undefined,
): TrialResult | undefined {
  const reports = tryReports(facts.program, facts.notes, cancelled);
  const proposals = reports && proposeEncoders(facts.program, facts.notes, cancelled);
  if (reports === undefined || proposals === undefined) return undefined;
  const whole = reports.every(({ calls }) => calls > 0);
  return { ...judgeTrials(facts, { reports, runs: [] }, levelsOf(project)), proposals, whole };
}

function levelsOf({ settings }: Project): ReadonlyMap<string, RuleLevel> {
  return new Map([...settings.rules].map(([rule, said]) => [rule, said.value]));
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
