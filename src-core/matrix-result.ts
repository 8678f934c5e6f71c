import type { Named, SimulatedRun } from "./simulation-result.ts";

/** Which mice, PCs and strokes a matrix is to be made of, by name; undefined for those that the project names, or the usual ones. */
export interface MatrixChoice {
  readonly mice: readonly string[] | undefined;
  readonly pcs: readonly string[] | undefined;
  readonly strokes: readonly string[] | undefined;
}

/** What there is to run: plain data. */
export type MatrixPlanResult =
  /** In one sentence, what has to be said or chosen first. */
  | { readonly kind: "cannot"; readonly message: string }
  | { readonly kind: "plan"; readonly plan: MatrixPlan };

/** Every mouse meets every PC, and each pair is run with every stroke. Each list has at least one name, each name once. */
export interface MatrixPlan {
  readonly mice: readonly Named[];
  readonly pcs: readonly Named[];
  readonly strokes: readonly Named[];
}

/** One mouse at one PC, by name. */
export interface MatrixCell {
  readonly mouse: string;
  readonly pc: string;
}

/** What one cell is run with. */
export interface CellChoice extends MatrixCell {
  readonly strokes: readonly string[];
  /** As for a single simulation: a cell's run is the same as that of `simulate`. */
  readonly seed: number;
}

/** What became of one stroke in a cell. */
export type StrokeOutcome =
  /** In one sentence, why it could not be run. */
  | { readonly kind: "cannot"; readonly stroke: string; readonly message: string }
  | { readonly kind: "run"; readonly stroke: string; readonly run: RunInBrief };

/** A run without what only a picture of it needs. */
export type RunInBrief = Omit<SimulatedRun, "details" | "sent" | "received">;

export interface CellResult extends MatrixCell {
  /** One for each stroke, in the order of the plan. */
  readonly outcomes: readonly StrokeOutcome[];
}

/** Part `part` of `parts`, counted from 1. */
export interface Shard {
  readonly part: number;
  readonly parts: number;
}

/** A matrix that was run, or a part of it. */
export interface MatrixResult {
  readonly plan: MatrixPlan;
  readonly seed: number;
  /** Undefined for the whole matrix. */
  readonly shard: Shard | undefined;
  /** In the order of the cells. */
  readonly cells: readonly CellResult[];
}

/** All cells, mouse by mouse, or those of one shard: of every `parts` cells the one at `part`. */
export function cellsOf({ mice, pcs }: MatrixPlan, shard: Shard | undefined): readonly MatrixCell[] {
  const all = mice.flatMap((mouse) => pcs.map((pc) => ({ mouse: mouse.name, pc: pc.name })));
  return shard === undefined ? all : all.filter((_, index) => index % shard.parts === shard.part - 1);
}
