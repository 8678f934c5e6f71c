import type { CheckResult, SettingsFault } from "../check-result.ts";
import { ruleOf, rules } from "../checks/registry.ts";
import type { Rule, RuleText } from "../checks/rule.ts";
import { judgeTrials, runRules, together } from "../checks/run-rules.ts";
import type { Finding, NotUnderstood, RuleLevel } from "../finding.ts";
import type { EncoderProposal } from "../note-proposal.ts";
import { allowancesOf, applyAllows } from "../notes/allow/apply-allows.ts";
import type { SettingsProblem } from "../notes/settings/settings.ts";
import type { Project } from "../project/project.ts";
import { mendReports } from "../reports/mend/mend-reports.ts";
import type { ReportTrial } from "../reports/report-trial.ts";
import { triedReport } from "../reports/tried-report.ts";
import { tryReports } from "../reports/try-reports.ts";
import { proposeEncoders } from "../reports/unnoted/propose-encoders.ts";
import type { TrialChoices } from "../trial-details.ts";
import { AcceptedFaults } from "./accepted-faults.ts";
import { idleLevels } from "./idle-levels.ts";
import { mendingOf } from "./mending.ts";
import type { ProjectReading } from "./project-reading.ts";
import type { TrialResult } from "./service.ts";
import { type ChosenFirmwareRun, chosenInBrief, runsInBrief } from "./whole-runs/chosen-run.ts";
import { isWholeFirmware } from "./whole-runs/purpose.ts";
import type { WholeRuns } from "./whole-runs/run-whole.ts";

/** Runs the rules over what was read, as the project's settings and notes want them run; `tried` is added. */
export function checkReading(reading: ProjectReading, tried: TrialResult | undefined): CheckResult {
  const { project, facts, files } = reading;
  const levels = levelsOf(project);
  const levelOf = ({ id, severity }: RuleText): RuleLevel => levels.get(id) ?? severity;
  const read = runRules(facts, levels);
  const isAllowed = (finding: Finding): boolean => allowancesOf(finding, facts.notes.allowances).length > 0;
  const { findings, notUnderstood } = tried === undefined ? read : together(read, tried, isAllowed);
  const unattached = ruleOf("note/unattached");
  // A rule that looks at a run has not said all before there was one.
  const ran = rules.filter((rule) => hasSaidAll(rule, tried, isWholeFirmware(facts)));
  const checked = ran.filter((rule) => levelOf(rule) !== "off").map(({ id }) => id);
  const unattachedLevel = unattached === undefined ? "off" : levelOf(unattached);
  const kept = applyAllows(findings, facts.notes.allowances, {
    checked: new Set(checked),
    unattached: unattachedLevel,
  });
  return {
    findings: [...kept, ...idleLevels(facts, project.settings, unattachedLevel)],
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
    ...(tried?.wholeRuns && { runs: tried.wholeRuns.runs.length }),
    checked,
  };
}

/** What came of running parts of a firmware, before rules looked at it. */
export interface PartTrials {
  readonly reports: readonly ReportTrial[];
  readonly proposals: readonly EncoderProposal[];
}

/** Runs encoders and decoders, and looks for fixes where they are at fault; undefined when cancelled. */
export function tryParts(
  reading: ProjectReading,
  cancelled: (() => boolean) | undefined,
): PartTrials | undefined {
  const { facts } = reading;
  const tried = tryReports(facts.program, facts.notes, cancelled);
  const reports = tried && mendReports(tried, mendingOf(reading, cancelled));
  const proposals = reports && proposeEncoders(facts.program, facts.notes, cancelled);
  return reports && proposals && { reports, proposals };
}

/** What somebody asked to be tried, and the run that was made for it. */
export interface Chosen {
  readonly choices: TrialChoices;
  readonly run: ChosenFirmwareRun | undefined;
}

/** What the rules say of trials. `whole` is undefined before the firmware was run whole. */
export function judged(
  reading: ProjectReading,
  { reports, proposals }: PartTrials,
  whole: WholeRuns | undefined,
  { choices, run }: Chosen,
): TrialResult {
  const { project, facts } = reading;
  const levels = levelsOf(project);
  const { findings, notUnderstood } = judgeTrials(facts, { reports, runs: whole?.runs ?? [] }, levels);
  const accepted = new AcceptedFaults(reading, levels);
  return {
    findings,
    notUnderstood: [...notUnderstood, ...notKnown(whole?.notRun ?? [], project)],
    proposals,
    whole: reports.every(({ calls }) => calls > 0),
    ran: whole?.complete === true,
    reports: reports.map((trial) => triedReport(facts.program, facts.notes, trial, choices)),
    wholeRuns: whole && isWholeFirmware(facts) ? runsInBrief(whole, accepted) : undefined,
    chosenRun: run && chosenInBrief(run, accepted),
    failure: undefined,
  };
}

/** Where nothing is run whole, what the text shows is all that there is to say. */
function hasSaidAll(rule: Rule, tried: TrialResult | undefined, isWhole: boolean): boolean {
  if (rule.judgeParts !== undefined && tried?.whole !== true) return false;
  if (rule.judge === undefined || tried?.ran === true) return true;
  return (rule.check ?? rule.judgeParts) !== undefined && !isWhole;
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
