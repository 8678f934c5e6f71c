import { mice } from "../bench/mice/profiles.ts";
import { pcProfiles } from "../bench/pcs/pc-profiles.ts";
import { strokesFor, usualStrokes } from "../bench/strokes/from-settings.ts";
import type {
  CellChoice,
  CellResult,
  MatrixChoice,
  MatrixPlanResult,
  StrokeOutcome,
} from "../matrix-result.ts";
import type { Said } from "../notes/wires.ts";
import type { Named } from "../simulation-result.ts";
import type { ProjectReading } from "./project-reading.ts";
import { allNamed, oneNamed } from "./simulation/choose.ts";
import { orWhyNot } from "./simulation/missing.ts";
import { boardOf, named, runOnBench } from "./simulation/run-on-bench.ts";

/** What a matrix of a firmware consists of, or why the firmware cannot be run at all. Never throws. */
export function planMatrix(reading: ProjectReading, choice: MatrixChoice): MatrixPlanResult {
  return orWhyNot(() => {
    // What keeps one cell from being run keeps all of them.
    boardOf(reading);
    const { simulate } = reading.project.settings;
    const plan = {
      mice: chosen("mouse", choice.mice, simulate.mice, mice, mice),
      pcs: chosen("PC", choice.pcs, simulate.pcs, pcProfiles, pcProfiles),
      strokes: chosen(
        "stroke",
        choice.strokes,
        simulate.strokes,
        strokesFor(simulate),
        usualStrokes(simulate),
      ),
    };
    return { kind: "plan", plan } as const;
  });
}

/** Runs one mouse at one PC with each of some strokes; takes as long as that takes. Never throws. */
export function runCell(reading: ProjectReading, { mouse, pc, strokes, seed }: CellChoice): CellResult {
  const all = strokesFor(reading.project.settings.simulate);
  const outcomes = strokes.map((name) => {
    const outcome = orWhyNot(() => {
      const around = {
        mouse: oneNamed("mouse", mouse, mice),
        pc: oneNamed("PC", pc, pcProfiles),
        stroke: oneNamed("stroke", name, all),
        seed,
      };
      return { kind: "run", run: runOnBench(reading, around) } as const;
    });
    return { ...outcome, stroke: name } satisfies StrokeOutcome;
  });
  return { mouse, pc, outcomes };
}

function chosen(
  what: string,
  asked: readonly string[] | undefined,
  ofProject: readonly Said<string>[],
  among: readonly Named[],
  usual: readonly Named[],
): readonly Named[] {
  if (asked !== undefined) return allNamed(what, asked, among).map(named);
  if (ofProject.length === 0) return usual.map(named);
  const names = ofProject.map(({ value }) => value);
  return allNamed(what, names, among).map(named);
}
