import { mice } from "../../bench/mice/profiles.ts";
import { pcProfiles } from "../../bench/pcs/pc-profiles.ts";
import { strokesFor } from "../../bench/strokes/from-settings.ts";
import type { ChosenRun, RunChoice, RunsInBrief } from "../../trial-details.ts";
import type { ProjectReading } from "../project-reading.ts";
import { oneNamed } from "../simulation/choose.ts";
import { orWhyNot } from "../simulation/missing.ts";
import { runOnBench } from "../simulation/run-on-bench.ts";
import type { WholeRuns } from "./run-whole.ts";

/** As for the runs of a check. */
const seed = 1;

/** Makes the run that somebody asked for. Never throws; undefined when cancelled. */
export function runChosen(
  reading: ProjectReading,
  choice: RunChoice,
  cancelled: (() => boolean) | undefined,
): ChosenRun | undefined {
  const ran = orWhyNot(() => {
    const around = {
      mouse: oneNamed("mouse", choice.mouse, mice),
      pc: oneNamed("PC", choice.pc, pcProfiles),
      stroke: oneNamed("stroke", choice.stroke, strokesFor(reading.project.settings.simulate)),
      seed,
      isUnwanted: () => cancelled?.() === true,
    };
    const { mouse, pc, stroke, verdict, stopped, strokeBegan } = runOnBench(reading, around);
    const faults = stopped === undefined ? verdict.failures.map(({ message }) => message) : [];
    return {
      kind: "run",
      verdict: { mouse, pc, stroke, faults, stopped: stopped?.message, strokeBegan },
    } as const;
  });
  return cancelled?.() === true ? undefined : { ...ran, choice };
}

/** Without what only rules need. */
export function runsInBrief({ runs, notRun }: WholeRuns): RunsInBrief {
  return {
    runs: runs.map(({ mouse, pc, stroke, faults, stopped, strokeBegan }) => ({
      mouse,
      pc,
      stroke,
      faults: faults.map(({ message }) => message),
      stopped,
      strokeBegan,
    })),
    notRun: notRun[0]?.message,
  };
}
