import { expect, test } from "vitest";
import { matrixAsText } from "../../../src-core/present/text/matrix-as-text.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import { matrixLines, sampleMatrix } from "./sample-matrix.ts";

const expected = `quay
  strokes nudge, click
  seed    4
  shard   1 of 2

         old                   hurried
  plain  ok                    x ps2/request-hold-short
  late   x report/counts-lost  x stopped
  wheel  ? not run             -

  quay/ps2.c:3:7  fault: the clock is low for "60 us" & too short (3 times)  [ps2/request-hold-short]
      | \thold(HOLD_US);
      | \t     ^^^^^^^
      first   at 512.3 ms of mouse plain, PC hurried, stroke nudge
      found   60 us
      limit   at least 100 us
      source  A timing table
      seen    in 3 runs of 2 cells

  the whole run  fault: counts are lost  [report/counts-lost]
      first   at 1000.0 ms of mouse late, PC old, stroke click
      seen    in this run alone

  error: the code stopped: main returned (quay/ps2.c:3:7)
      first   in mouse late, PC hurried, stroke nudge
      seen    in this run alone

  not run: the cell could not be run: no memory
      first   in mouse wheel, PC old, stroke nudge
      seen    in this run alone

  fault: the stroke never began: mouse and PC were not both ready
      first   in mouse wheel, PC old, stroke click
      seen    in this run alone

5 cells of 2 strokes: 1 passed, 3 failed, 1 could not be run
`;

test("a table of what works, each first fault once, and the sum", () => {
  expect(matrixAsText("quay", sampleMatrix, matrixLines, plain)).toBe(expected);
});

test("colours change nothing else", () => {
  const painted = matrixAsText("quay", sampleMatrix, matrixLines, coloured);
  expect(painted).toContain("\u001b[32mok\u001b[0m");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the control sequences of ECMA-48 begin with one
  expect(painted.replace(/\u001b\[[\d;]*m/g, "")).toBe(expected);
});

test("where all is well, one line says so", () => {
  const [first] = sampleMatrix.cells;
  const cells = first === undefined ? [] : [first];
  const plan = {
    mice: sampleMatrix.plan.mice.slice(0, 1),
    pcs: sampleMatrix.plan.pcs.slice(0, 1),
    strokes: sampleMatrix.plan.strokes,
  };
  expect(matrixAsText("quay", { plan, seed: 1, shard: undefined, cells }, matrixLines, plain)).toBe(`quay
  strokes nudge, click
  seed    1

         old
  plain  ok

1 cell of 2 strokes: all passed
`);
});
