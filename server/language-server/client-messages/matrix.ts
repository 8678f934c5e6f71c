import type { MatrixPlan } from "../../../src-core/matrix-result.ts";

/** Request: what the matrix of a firmware consists of. Its parameters are a `MatrixParams`, its answer a `MatrixPlanAnswer`. */
export const matrixPlanRequest = "edgewise/matrixPlan";

/**
 * Request: runs the matrix in workers and ends when all cells are run. Its parameters are a `MatrixRunParams`, its answer a
 * `MatrixRunAnswer`; each cell is told by a notification as soon as it is run, and cancelling the request ends the runs.
 */
export const matrixRunRequest = "edgewise/matrixRun";

/**
 * Request: which sources are not any more what the last matrix of a firmware was run of. Its parameters are a `MatrixParams`, its
 * answer a `RunSourcesAnswer`.
 */
export const matrixSourcesRequest = "edgewise/matrixSources";

/** Notification: a cell was run. Its parameters are a `MatrixCellParams`. */
export const matrixCellNotification = "edgewise/matrixCell";

export interface MatrixParams {
  readonly project: string;
}

export type MatrixPlanAnswer =
  /** In one sentence, why there is no matrix. */
  | { readonly kind: "cannot"; readonly message: string }
  | { readonly kind: "plan"; readonly plan: MatrixPlan };

export interface MatrixRunParams extends MatrixParams {
  /** A number of the client's, which the cells carry. */
  readonly matrix: number;
}

export type MatrixRunAnswer =
  /** In one sentence, why not all cells were run. */
  { readonly kind: "cannot"; readonly message: string } | { readonly kind: "done" };

export interface MatrixCellParams {
  readonly matrix: number;
  readonly cell: CellVerdict;
}

/** What became of one mouse at one PC. */
export interface CellVerdict {
  readonly mouse: string;
  readonly pc: string;
  readonly verdict: "passed" | "failed" | "not run";
  /** The verdict in a word or two: a rule's name where one tells of the fault. */
  readonly word: string;
  /** The first fault, in a sentence; what was run where there is none. */
  readonly detail: string;
  /** The stroke that showed it; undefined where there is none. */
  readonly stroke: string | undefined;
}

export type { MatrixPlan } from "../../../src-core/matrix-result.ts";
