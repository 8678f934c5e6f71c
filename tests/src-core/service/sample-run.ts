import { readdirSync, readFileSync } from "node:fs";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import type { SimulatedRun, SimulationChoice } from "../../../src-core/simulation-result.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

export type Files = Readonly<Record<string, string>>;

/** The files of a folder of the sample workspace. */
export function sampleFiles(name: string): Files {
  const folder = `sample-workspace/${name}`;
  return Object.fromEntries(
    readdirSync(folder).map((file) => [file, readFileSync(`${folder}/${file}`, "utf8")]),
  );
}

/** Runs a firmware as `simulate` does, with the stroke `nudge` unless another is named. Throws where it cannot be run. */
export function runOf(files: Files, choice: Partial<SimulationChoice> = {}): SimulatedRun {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "adapter" });
  const [project] = service.projectsAt(".");
  const usual: SimulationChoice = { stroke: "nudge", mouse: undefined, pc: undefined, seed: 1 };
  const result = service.simulate(project?.id ?? "", { ...usual, ...choice });
  if (result.kind === "cannot") throw new Error(result.message);
  return result.run;
}

export function linesOf(files: Files): FileLines {
  return new FileLines((file) => files[file]);
}
