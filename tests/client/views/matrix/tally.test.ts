import { expect, test } from "vitest";
import { endInWords, faultsOf, progressInWords } from "../../../../client/views/matrix/tally.ts";
import type { CellVerdict } from "../../../../server/language-server/client-messages/matrix.ts";

const cell = (mouse: string, verdict: CellVerdict["verdict"], word: string = verdict): CellVerdict => ({
  mouse,
  pc: "rts-toggle",
  verdict,
  word,
  detail: `${word} of ${mouse}`,
  stroke: verdict === "passed" ? undefined : "nudge",
});

test("progress counts each verdict that there is", () => {
  expect(progressInWords([], 4)).toBe("0 of 4 cells");
  const some = [cell("a", "passed"), cell("b", "failed"), cell("c", "passed")];
  expect(progressInWords(some, 4)).toBe("3 of 4 cells: 2 passed, 1 failed");
  expect(progressInWords([...some, cell("d", "not run")], 4)).toBe(
    "All 4 cells: 2 passed, 1 failed, 1 not run",
  );
});

test("an end before all cells were run has its reason", () => {
  expect(endInWords({ kind: "done" })).toBe("");
  expect(endInWords({ kind: "cancelled" })).toBe("; cancelled");
  expect(endInWords({ kind: "cannot", message: "there is no main" })).toBe("; there is no main");
});

test("faults are told once, those of most cells first, with the cell that showed them first", () => {
  const cells = [
    cell("a", "failed", "stopped"),
    cell("b", "failed", "ps2/wait-forever"),
    cell("c", "passed"),
    cell("d", "failed", "ps2/wait-forever"),
  ];
  expect(faultsOf(cells).map(({ word, cells: count, first }) => [word, count, first.mouse])).toEqual([
    ["ps2/wait-forever", 2, "b"],
    ["stopped", 1, "a"],
  ]);
});
