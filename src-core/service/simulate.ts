import { mice } from "../bench/mice/profiles.ts";
import { pcProfiles } from "../bench/pcs/pc-profiles.ts";
import { strokesFor } from "../bench/strokes/from-settings.ts";
import type { SimulationChoice, SimulationResult } from "../simulation-result.ts";
import type { ProjectReading } from "./project-reading.ts";
import { oneNamed } from "./simulation/choose.ts";
import { orWhyNot } from "./simulation/missing.ts";
import { runInDetail } from "./simulation/run-on-bench.ts";

/** Runs a firmware between a virtual mouse and a virtual PC. Never throws. */
export function simulateReading(reading: ProjectReading, choice: SimulationChoice): SimulationResult {
  return orWhyNot(() => {
    const stroke = oneNamed(
      "stroke",
      choice.stroke ?? "circle",
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
