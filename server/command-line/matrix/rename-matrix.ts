import type { MatrixResult } from "../../../src-core/matrix-result.ts";
import { renameRun } from "../../rename-run.ts";

/** The same result with every file under the name that `rename` gives it. */
export function renameMatrix(result: MatrixResult, rename: (file: string) => string): MatrixResult {
  const cells = result.cells.map((cell) => ({
    ...cell,
    outcomes: cell.outcomes.map((outcome) =>
      outcome.kind === "run" ? { ...outcome, run: renameRun(outcome.run, rename) } : outcome,
    ),
  }));
  return { ...result, cells };
}
