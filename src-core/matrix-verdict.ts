import type { Failure } from "./bench/verdicts/verdict.ts";
import type { Span } from "./finding.ts";
import type { CellResult, MatrixResult, StrokeOutcome } from "./matrix-result.ts";

/** Why a run does not count as passed. */
export type Trouble =
  /** The first thing that went wrong in it. */
  | { readonly kind: "failure"; readonly failure: Failure }
  /** The code did nothing more; what else went wrong follows from it. */
  | { readonly kind: "stopped"; readonly message: string; readonly span: Span | undefined }
  /** Mouse and PC were never both ready, and nothing else says why. */
  | { readonly kind: "never-began" }
  | { readonly kind: "cannot"; readonly message: string };

/** What is wrong in a run first; undefined for one that passed. */
export function troubleOf(outcome: StrokeOutcome): Trouble | undefined {
  if (outcome.kind === "cannot") return { kind: "cannot", message: outcome.message };
  const { verdict, stopped, strokeBegan } = outcome.run;
  if (stopped !== undefined) return { kind: "stopped", ...stopped };
  const [failure] = verdict.failures;
  if (failure !== undefined) return { kind: "failure", failure };
  return strokeBegan ? undefined : { kind: "never-began" };
}

/** Of the strokes of a cell the first that did not pass, and why. */
export function firstTrouble({
  outcomes,
}: CellResult): { readonly stroke: string; readonly trouble: Trouble } | undefined {
  for (const outcome of outcomes) {
    const trouble = troubleOf(outcome);
    if (trouble !== undefined) return { stroke: outcome.stroke, trouble };
  }
  return undefined;
}

/** How many cells passed, failed, and could not be run. */
export interface CellCounts {
  readonly passed: number;
  readonly failed: number;
  readonly notRun: number;
}

export function countCells({ cells }: Pick<MatrixResult, "cells">): CellCounts {
  const troubles = cells.map((cell) => firstTrouble(cell)?.trouble.kind);
  const passed = troubles.filter((kind) => kind === undefined).length;
  const notRun = troubles.filter((kind) => kind === "cannot").length;
  return { passed, notRun, failed: cells.length - passed - notRun };
}
