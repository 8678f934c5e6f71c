import type { FirmwareLens, Lens, ReportLens } from "../../lens.ts";
import type { RunChoice, RunsInBrief, RunVerdict } from "../../trial-details.ts";

/** A lens in one line. */
export function lensTitle(lens: Lens): string {
  const told = lens.kind === "report" ? reportTitle(lens) : firmwareTitle(lens);
  return lens.isStale && isResult(lens) ? `${told} (from before the edit)` : told;
}

/** The run that the title is about; undefined where there is none. */
export function runOfTitle({ runs, chosen }: FirmwareLens): RunChoice | undefined {
  if (chosen !== undefined) return chosen.choice;
  const shown = runs && mostTelling(runs);
  return shown && { mouse: shown.mouse.name, pc: shown.pc.name, stroke: shown.stroke.name };
}

function isResult(lens: Lens): boolean {
  if (lens.kind === "report") return lens.movement !== undefined;
  return lens.runs !== undefined || lens.chosen !== undefined;
}

function reportTitle({ layout, movement, isStale, failure }: ReportLens): string {
  if (failure !== undefined) return `${layout}: not tried: ${brief(failure)}`;
  if (movement === undefined)
    return isStale ? `${layout}: not tried yet` : `${layout}: not tried, as its note is at fault`;
  const { given, outcome } = movement;
  if (outcome.kind === "cannot") return `${given}: ${brief(outcome.why)}`;
  const { came, judgement, right } = outcome;
  switch (judgement) {
    case "right":
      return `${given}: ${came}, as ${layout} wants`;
    case "allowed":
      return `${given}: ${came}; a full ${layout} report is ${right}`;
    case "wrong":
      return `${given}: ${came}, right is ${right}`;
  }
}

function firmwareTitle({ runs, chosen, failure }: FirmwareLens): string {
  if (failure !== undefined) return `the whole firmware: not run: ${brief(failure)}`;
  if (chosen !== undefined) {
    if (chosen.kind === "run") return verdictText(chosen.verdict);
    const { mouse, pc, stroke } = chosen.choice;
    return `${cellText(mouse, pc, stroke)}: ${brief(chosen.message)}`;
  }
  return runs === undefined ? "the whole firmware: not run yet" : runsTitle(runs);
}

/** The first that failed. */
function mostTelling({ runs }: RunsInBrief): RunVerdict | undefined {
  return runs.find((run) => !hasPassed(run)) ?? runs[0];
}

function runsTitle(all: RunsInBrief): string {
  const { runs, notRun } = all;
  const failed = runs.filter((run) => !hasPassed(run));
  const shown = mostTelling(all);
  if (shown === undefined) return brief(notRun ?? "the firmware was not run");
  const told = verdictText(shown);
  if (failed.length > 0)
    return runs.length === 1 ? told : `${told} (${failed.length} of ${runs.length} runs failed)`;
  if (notRun !== undefined) return `${told}; ${brief(notRun)}`;
  return runs.length === 1
    ? told
    : `${told}, as did ${runs.length - 1} other ${runs.length === 2 ? "run" : "runs"}`;
}

function hasPassed({ faults, stopped, strokeBegan }: RunVerdict): boolean {
  return faults.length === 0 && stopped === undefined && strokeBegan;
}

function verdictText({ mouse, pc, stroke, faults, accepted, stopped, strokeBegan }: RunVerdict): string {
  const cell = cellText(mouse.name, pc.name, stroke.name);
  const [first] = faults;
  if (stopped !== undefined) return `${cell}: not run to its end: ${brief(stopped)}`;
  if (first !== undefined)
    return faults.length === 1
      ? `${cell}: 1 fault: ${brief(first)}`
      : `${cell}: ${faults.length} faults, first: ${brief(first)}`;
  if (!strokeBegan) return `${cell}: mouse and PC were never both ready`;
  if (accepted === 0) return `${cell}: passed`;
  return `${cell}: passed but for ${accepted === 1 ? "1 fault" : `${accepted} faults`} accepted`;
}

function cellText(mouse: string, pc: string, stroke: string): string {
  return `${mouse} mouse at ${pc}, ${stroke}`;
}

/** A lens is one line of the window, and what is cut off stands among the findings. */
const longest = 90;

function brief(message: string): string {
  if (message.length <= longest) return message;
  return `${message.slice(0, message.lastIndexOf(" ", longest))} …`;
}
