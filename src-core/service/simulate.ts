import { mice } from "../bench/mice/profiles.ts";
import { pcProfiles } from "../bench/pcs/pc-profiles.ts";
import { strokesFor } from "../bench/strokes/from-settings.ts";
import type { Project } from "../project/project.ts";
import type { Named, RunChoices, SimulationChoice, SimulationResult } from "../simulation-result.ts";
import type { ProjectReading } from "./project-reading.ts";
import { oneNamed } from "./simulation/choose.ts";
import { orWhyNot } from "./simulation/missing.ts";
import { named, runInDetail } from "./simulation/run-on-bench.ts";

const usualStroke = "circle";

/** Strokes of the project and the bench, mice and PCs. */
export function runChoices({ root, settings }: Project): RunChoices {
  const strokes = strokesFor(settings.simulate);
  const isUsual = ({ name }: Named): boolean => name === usualStroke;
  return {
    root,
    strokes: [...strokes.filter(isUsual), ...strokes.filter((each) => !isUsual(each))].map(named),
    mice: mice.map(named),
    pcs: pcProfiles.map(named),
  };
}

/** Runs a firmware between a virtual mouse and a virtual PC. Never throws. */
export function simulateReading(reading: ProjectReading, choice: SimulationChoice): SimulationResult {
  return orWhyNot(() => {
    const stroke = oneNamed(
      "stroke",
      choice.stroke ?? usualStroke,
      strokesFor(reading.project.settings.simulate),
    );
    const mouse = oneNamed("mouse", choice.mouse ?? firstOf(mice), mice);
    const pc = oneNamed("PC", choice.pc ?? firstOf(pcProfiles), pcProfiles);
    const run = runInDetail(reading, { mouse, pc, stroke, seed: choice.seed });
    return { kind: "run", run } as const;
  });
}

function firstOf(among: readonly { readonly name: string }[]): string {
  return among[0]?.name ?? "";
}
