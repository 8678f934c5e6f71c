import { expect, test } from "vitest";
import { cellVerdict } from "../../../server/language-server/runs/cell-verdict.ts";
import type { CellResult } from "../../../src-core/matrix-result.ts";

test("a cell that could not be run says why, and which stroke it was", () => {
  const cell: CellResult = {
    mouse: "plain",
    pc: "rts-toggle",
    outcomes: [{ kind: "cannot", stroke: "nudge", message: "no board is named" }],
  };
  expect(cellVerdict(cell)).toEqual({
    mouse: "plain",
    pc: "rts-toggle",
    verdict: "not run",
    word: "not run",
    detail: "stroke nudge: no board is named",
    stroke: "nudge",
  });
});
