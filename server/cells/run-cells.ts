import type { CellResult } from "../../src-core/matrix-result.ts";
import type { StarterOf, WorkerOf } from "../workers/worker.ts";
import { type CellJob, notRun } from "./cell-job.ts";

export type StartCellWorker = StarterOf<CellJob, CellResult>;

export interface CellsRun {
  readonly jobs: readonly CellJob[];
  readonly start: StartCellWorker;
  /** How many workers at most; at least 1. */
  readonly workers: number;
  /** Called once for each job, as it is done. */
  readonly done: (result: CellResult) => void;
  /** When it is raised, all workers are ended. */
  readonly interrupted: AbortSignal;
}

/**
 * Runs cells on several threads. The results come in the order of the jobs, whichever is done first; undefined when it was
 * interrupted. A worker that ends by itself leaves its cell not run, and another takes its place.
 */
export function runCells({
  jobs,
  start,
  workers,
  done,
  interrupted,
}: CellsRun): Promise<readonly CellResult[] | undefined> {
  return new Promise((resolve) => {
    const results = new Map<number, CellResult>();
    const working = new Set<WorkerOf<CellJob>>();
    let next = 0;
    const finish = (results: readonly CellResult[] | undefined): void => {
      for (const worker of working) worker.end();
      interrupted.removeEventListener("abort", onAbort);
      resolve(results);
    };
    const onAbort = (): void => finish(undefined);
    const keep = (at: number, result: CellResult): void => {
      results.set(at, result);
      done(result);
      if (results.size === jobs.length) finish(jobs.flatMap((_, index) => results.get(index) ?? []));
    };
    const hire = (): void => {
      let at = next++;
      let job = jobs[at];
      if (job === undefined) return;
      const worker = start({
        answered(result) {
          const answered = at;
          at = next++;
          job = jobs[at];
          if (job === undefined) {
            working.delete(worker);
            worker.end();
          } else worker.post(job);
          keep(answered, result);
        },
        ended(why) {
          working.delete(worker);
          if (job === undefined) return;
          hire();
          keep(at, notRun(job, `the cell could not be run: ${why}`));
        },
      });
      working.add(worker);
      worker.post(job);
    };
    if (interrupted.aborted || jobs.length === 0) {
      resolve(interrupted.aborted ? undefined : []);
      return;
    }
    interrupted.addEventListener("abort", onAbort);
    for (let count = 0; count < Math.min(workers, jobs.length); count++) hire();
  });
}
