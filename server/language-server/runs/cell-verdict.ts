import type { CellResult } from "../../../src-core/matrix-result.ts";
import { firstTrouble } from "../../../src-core/matrix-verdict.ts";
import type { CellVerdict } from "../client-messages/matrix.ts";

/** A cell for a table: its verdict in a word, and the first fault of it. */
export function cellVerdict(cell: CellResult): CellVerdict {
  const { mouse, pc } = cell;
  const found = firstTrouble(cell);
  if (found === undefined) {
    const strokes = cell.outcomes.map(({ stroke }) => stroke).join(", ");
    return {
      mouse,
      pc,
      verdict: "passed",
      word: "passed",
      detail: `passed with ${strokes}`,
      stroke: undefined,
    };
  }
  const { stroke, trouble } = found;
  const failed = (word: string, detail: string): CellVerdict => ({
    mouse,
    pc,
    verdict: "failed",
    word,
    detail: `stroke ${stroke}: ${detail}`,
    stroke,
  });
  switch (trouble.kind) {
    case "failure":
      return failed(trouble.failure.rule, trouble.failure.message);
    case "stopped":
      return failed("stopped", `the code stopped: ${trouble.message}`);
    case "never-began":
      return failed("never began", "mouse and PC were never both ready for the stroke");
    case "cannot":
      return { ...failed("not run", trouble.message), verdict: "not run" };
  }
}
