import { mice } from "../../bench/mice/profiles.ts";
import { pcProfiles } from "../../bench/pcs/pc-profiles.ts";
import { strokesFor } from "../../bench/strokes/from-settings.ts";
import type { FirmwareRun } from "../../firmware-run.ts";
import type { ChosenRun, RunChoice, RunsInBrief, RunVerdict } from "../../trial-details.ts";
import type { AcceptedFaults } from "../accepted-faults.ts";
import type { ProjectReading } from "../project-reading.ts";
import { oneNamed } from "../simulation/choose.ts";
import { orWhyNot } from "../simulation/missing.ts";
import { recordRun } from "../simulation/run-on-bench.ts";
import { firmwareRun } from "./firmware-run.ts";
import type { WholeRuns } from "./run-whole.ts";

/** As for the runs of a check. */
const seed = 1;

/** What became of a run that somebody asked for. */
export type ChosenFirmwareRun =
  | Extract<ChosenRun, { kind: "cannot" }>
  | { readonly kind: "run"; readonly choice: RunChoice; readonly run: FirmwareRun };

/** Makes the run that somebody asked for. Never throws; undefined when cancelled. */
export function runChosen(
  reading: ProjectReading,
  choice: RunChoice,
  cancelled: (() => boolean) | undefined,
): ChosenFirmwareRun | undefined {
  const ran = orWhyNot(() => {
    const around = {
      mouse: oneNamed("mouse", choice.mouse, mice),
      pc: oneNamed("PC", choice.pc, pcProfiles),
      stroke: oneNamed("stroke", choice.stroke, strokesFor(reading.project.settings.simulate)),
      seed,
      isUnwanted: () => cancelled?.() === true,
    };
    return { kind: "run", run: firmwareRun(reading, around, recordRun(reading, around)) } as const;
  });
  return cancelled?.() === true ? undefined : { ...ran, choice };
}

/** What somebody asked for, without what only rules need. */
export function chosenInBrief(chosen: ChosenFirmwareRun, accepted: AcceptedFaults): ChosenRun {
  if (chosen.kind === "cannot") return chosen;
  const { kind, choice, run } = chosen;
  return { kind, choice, verdict: verdictOf(run, accepted) };
}

/** The same of all runs of a check. */
export function runsInBrief({ runs, notRun }: WholeRuns, accepted: AcceptedFaults): RunsInBrief {
  return { runs: runs.map((run) => verdictOf(run, accepted)), notRun: notRun[0]?.message };
}

function verdictOf(
  { mouse, pc, stroke, faults, stopped, strokeBegan }: FirmwareRun,
  accepted: AcceptedFaults,
): RunVerdict {
  const parted = accepted.part(faults);
  return {
    mouse,
    pc,
    stroke,
    faults: parted.open.map(({ message }) => message),
    accepted: parted.accepted.length,
    stopped,
    strokeBegan,
  };
}
