import type { CellResult } from "../../../src-core/matrix-result.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { type CellJob, notRun } from "../../cells/cell-job.ts";

/** The worker's side: reads a project once and runs many of its cells. */
export class CellAnswerer {
  readonly #service: Service;
  readonly #read = new Set<string>();

  constructor(service: Service) {
    this.#service = service;
  }

  /** Takes as long as the firmware does. Never throws. */
  answer(job: CellJob): CellResult {
    try {
      if (!this.#knows(job.project)) return notRun(job, "its files are not on the disk any more");
      return this.#service.runCell(job.project, job.cell);
    } catch (error) {
      return notRun(job, error instanceof Error ? error.message : String(error));
    }
  }

  #knows(project: string): boolean {
    if (!this.#read.has(project) && this.#service.projectsAt(project).some(({ id }) => id === project))
      this.#read.add(project);
    return this.#read.has(project);
  }
}
