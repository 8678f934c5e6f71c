import { cellsOf, type MatrixPlan, type MatrixResult } from "../../../src-core/matrix-result.ts";
import { firstTrouble } from "../../../src-core/matrix-verdict.ts";
import { matricesAsJson } from "../../../src-core/present/json/matrix-as-json.ts";
import { matricesAsJUnit } from "../../../src-core/present/junit/matrix-as-junit.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { matrixAsText } from "../../../src-core/present/text/matrix-as-text.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import type { CellJob } from "../../cells/cell-job.ts";
import { runCells, type StartCellWorker } from "../../cells/run-cells.ts";
import { DiskFiles } from "../../files/disk-files.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Command, Surroundings } from "../command.ts";
import { exitStatus } from "../exit-status.ts";
import { projectsOf, seenFrom } from "../projects-at.ts";
import { writeOutput } from "../write-output.ts";
import { Progress } from "./progress.ts";
import { renameMatrix } from "./rename-matrix.ts";
import { formats, type MatrixWishes, wishesOf } from "./wishes.ts";

/** How cells get threads. */
export interface CellWorkers {
  readonly start: StartCellWorker;
  /** How many there are unless the user says how many. */
  readonly usual: number;
}

/** `edgewise matrix`. */
export function matrixCommand(
  makeService: (host: SourceHost) => Promise<Service>,
  workers: CellWorkers,
): Command {
  return {
    name: "matrix",
    operands: "[PATH...] [OPTION...]",
    summary: "Runs the whole firmware with every mouse at every PC.",
    options: [
      { name: "strokes", value: "A,B", help: "what the hand does; see below for the usual ones" },
      { name: "mice", value: "A,B", help: "which mice; all unless given" },
      { name: "pcs", value: "A,B", help: "which PCs; all unless given" },
      { name: "shard", value: "I/N", help: "run only every N-th cell, from the I-th on" },
      { name: "seed", value: "N", help: "where jitter and noise come from; 1 unless given" },
      { name: "workers", value: "N", help: "how many threads; as many as there are cores unless given" },
      { name: "format", value: formats.join("|"), help: "what the report looks like; text unless given" },
      { name: "output", value: "FILE", help: "write the report to FILE instead of the terminal" },
    ],
    details: [
      "Exit status: 0 when every cell passes, 1 when one does not, 2 when it could not be done, 130 after Ctrl-C.",
      "What is not given is what edgewise.json names under `simulate`; else all mice, all PCs, and the strokes",
      "nudge, fast-diagonals, flick, click, all-at-once and the project's own.",
      "A name that there is not is answered with those that there are.",
      "A cell's run is that of `edgewise simulate` with the same names and seed, however many threads there are.",
    ],
    async run(given, surroundings) {
      const wanted = wishesOf(given);
      const files = new DiskFiles(surroundings.workingFolder);
      const planned = plan(await makeService(files), wanted, surroundings);
      const ran = await run(planned, wanted, workers, surroundings);
      if (ran === undefined) return exitStatus.interrupted;
      writeOutput(report(ran, files, wanted, surroundings), wanted.output, surroundings);
      const cells = ran.flatMap(({ result }) => result.cells);
      return cells.every((cell) => firstTrouble(cell) === undefined) ? exitStatus.clean : exitStatus.findings;
    },
  };
}

interface Planned {
  /** As the service names it. */
  readonly id: string;
  readonly plan: MatrixPlan;
}

function plan(
  service: Service,
  { paths, choice }: MatrixWishes,
  { workingFolder }: Surroundings,
): readonly Planned[] {
  const asSeenFromHere = seenFrom(workingFolder);
  return projectsOf(service, paths, workingFolder).map(({ id }) => {
    const result = service.planMatrix(id, choice);
    if (result.kind === "cannot") throw new CannotDo(`${asSeenFromHere(id)}: ${result.message}`);
    return { id, plan: result.plan };
  });
}

interface ProjectMatrix {
  readonly project: string;
  readonly result: MatrixResult;
}

/** Undefined when the user interrupted it, which then was said. */
async function run(
  planned: readonly Planned[],
  { seed, shard, workers }: MatrixWishes,
  { start, usual }: CellWorkers,
  { workingFolder, stderr, showsProgress, onInterrupt }: Surroundings,
): Promise<readonly ProjectMatrix[] | undefined> {
  const jobsOf = ({ id, plan }: Planned): readonly CellJob[] => {
    const strokes = plan.strokes.map(({ name }) => name);
    return cellsOf(plan, shard).map((cell) => ({ project: id, cell: { ...cell, strokes, seed } }));
  };
  const jobs = planned.flatMap(jobsOf);
  const progress = new Progress(jobs.length, showsProgress ? stderr : () => undefined);
  const interruption = new AbortController();
  const listenNoMore = onInterrupt(() => interruption.abort());
  const results = await runCells({
    jobs,
    start,
    workers: workers ?? usual,
    done: (result) => progress.count(result),
    interrupted: interruption.signal,
  });
  listenNoMore();
  progress.clear();
  if (results === undefined) {
    stderr(`edgewise: interrupted after ${progress.done} of ${jobs.length} cells; there is no report\n`);
    return undefined;
  }
  const asSeenFromHere = seenFrom(workingFolder);
  let from = 0;
  return planned.map((each) => {
    const cells = results.slice(from, from + jobsOf(each).length);
    from += cells.length;
    const result = renameMatrix({ plan: each.plan, seed, shard, cells }, asSeenFromHere);
    return { project: asSeenFromHere(each.id), result };
  });
}

function report(
  matrices: readonly ProjectMatrix[],
  files: DiskFiles,
  { format, output }: MatrixWishes,
  { colours }: Surroundings,
): string {
  const lines = new FileLines((file) => files.readText(file));
  switch (format) {
    case "text": {
      const paint = colours && output === undefined ? coloured : plain;
      return matrices.map(({ project, result }) => matrixAsText(project, result, lines, paint)).join("\n");
    }
    case "json":
      return matricesAsJson(matrices, lines);
    case "junit":
      return matricesAsJUnit(matrices, lines);
  }
}
