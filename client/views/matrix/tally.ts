import type { CellVerdict } from "../../../server/language-server/client-messages/matrix.ts";
import type { EndOfMatrix } from "./messages.ts";

/** How far a matrix is, in words: "12 of 108 cells run: 10 passed, 2 failed". */
export function progressInWords(cells: readonly CellVerdict[], all: number): string {
  const counts = (["passed", "failed", "not run"] as const).map(
    (verdict) => [cells.filter((cell) => cell.verdict === verdict).length, verdict] as const,
  );
  const told = counts.filter(([count]) => count > 0).map(([count, verdict]) => `${count} ${verdict}`);
  const done = cells.length === all ? `All ${all}` : `${cells.length} of ${all}`;
  return `${done} cells${told.length === 0 ? "" : `: ${told.join(", ")}`}`;
}

/** What is said behind that when no more cells come. */
export function endInWords(why: EndOfMatrix): string {
  switch (why.kind) {
    case "done":
      return "";
    case "cancelled":
      return "; cancelled";
    case "lost":
      return "; the checker ended";
    case "cannot":
      return `; ${why.message}`;
  }
}

/** First faults by their word, those of most cells first. */
export function faultsOf(
  cells: readonly CellVerdict[],
): readonly { readonly word: string; readonly cells: number; readonly first: CellVerdict }[] {
  const found = new Map<string, { word: string; cells: number; first: CellVerdict }>();
  for (const cell of cells) {
    if (cell.verdict === "passed") continue;
    const known = found.get(cell.word) ?? { word: cell.word, cells: 0, first: cell };
    found.set(cell.word, { ...known, cells: known.cells + 1 });
  }
  return [...found.values()].sort((a, b) => b.cells - a.cells);
}
