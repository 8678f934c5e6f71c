import type { CellChoice, CellResult } from "../../src-core/matrix-result.ts";

/** What a worker is asked: plain data. The answer is a `CellResult`. */
export interface CellJob {
  /** Its id, at which the worker's own service finds it too. */
  readonly project: string;
  readonly cell: CellChoice;
}

/** A cell that was not run, and why, in one sentence. */
export function notRun({ cell: { mouse, pc, strokes } }: CellJob, message: string): CellResult {
  return { mouse, pc, outcomes: strokes.map((stroke) => ({ kind: "cannot", stroke, message })) };
}
