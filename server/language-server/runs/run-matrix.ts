import { type CellResult, cellsOf, type MatrixPlan } from "../../../src-core/matrix-result.ts";
import { type CellJob, notRun } from "../../cells/cell-job.ts";
import { runCells, type StartCellWorker } from "../../cells/run-cells.ts";
import type { Texts } from "../trials/texts.ts";
import type { StartRunWorker } from "./run-worker.ts";

export interface MatrixRun {
  readonly project: string;
  readonly texts: Texts;
  readonly plan: MatrixPlan;
  readonly start: StartRunWorker;
  /** How many workers at most; at least 1. */
  readonly workers: number;
  readonly done: (cell: CellResult) => void;
  readonly interrupted: AbortSignal;
}

/** The seed of `edgewise simulate` and `edgewise matrix` unless another is given. */
export const usualSeed = 1;

/** Runs all cells over the texts that were handed over; undefined when it was interrupted. */
export function runMatrix({ project, texts, plan, start, workers, done, interrupted }: MatrixRun) {
  const strokes = plan.strokes.map(({ name }) => name);
  const jobs = cellsOf(plan, undefined).map(
    (cell): CellJob => ({
      project,
      cell: { ...cell, strokes, seed: usualSeed },
    }),
  );
  return runCells({ jobs, start: cellWorkers(start, texts), workers, done, interrupted });
}

/** Workers that are asked for cells alone. */
function cellWorkers(start: StartRunWorker, texts: Texts): StartCellWorker {
  return ({ answered, ended }) => {
    let asked: CellJob | undefined;
    const worker = start({
      answered: (reply) => {
        if (reply.kind === "cell") answered(reply.result);
        else if (asked !== undefined)
          answered(notRun(asked, reply.kind === "cannot" ? reply.message : "the worker gave no verdict"));
      },
      ended,
    });
    return {
      post(job) {
        asked = job;
        worker.post({ kind: "cell", texts, ...job });
      },
      end: () => worker.end(),
    };
  };
}
