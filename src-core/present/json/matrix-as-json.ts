import type { CellResult, MatrixResult } from "../../matrix-result.ts";
import { countCells, firstTrouble } from "../../matrix-verdict.ts";
import type { FileLines } from "../line-index.ts";
import { jsonOutcome } from "./simulation-as-json.ts";

/** Version of the shape below; it rises when a reader of an older shape would go wrong. */
const shapeVersion = 1;

/** Matrices as one JSON document, ended by a line feed. Times are picoseconds; lines and columns count from 1. */
export function matricesAsJson(
  matrices: readonly { readonly project: string; readonly result: MatrixResult }[],
  lines: FileLines,
): string {
  const document = {
    version: shapeVersion,
    matrices: matrices.map(({ project, result }) => {
      const { plan, seed, shard, cells } = result;
      return {
        project,
        seed,
        ...(shard === undefined ? {} : { shard }),
        mice: plan.mice.map(({ name }) => name),
        pcs: plan.pcs.map(({ name }) => name),
        strokes: plan.strokes.map(({ name }) => name),
        cells: cells.map((cell) => jsonCell(cell, lines)),
        summary: countCells(result),
      };
    }),
  };
  return `${JSON.stringify(document, undefined, 2)}\n`;
}

function jsonCell(cell: CellResult, lines: FileLines): object {
  const { mouse, pc, outcomes } = cell;
  return {
    mouse,
    pc,
    passed: firstTrouble(cell) === undefined,
    runs: outcomes.map((outcome) => {
      const { stroke } = outcome;
      if (outcome.kind === "cannot") return { stroke, passed: false, cannot: outcome.message };
      const { counts, clicks, delay, bytes } = outcome.run.verdict.figures;
      return { stroke, ...jsonOutcome(outcome.run, lines), figures: { counts, clicks, delay, bytes } };
    }),
  };
}
