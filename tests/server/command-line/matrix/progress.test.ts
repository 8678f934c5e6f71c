import { expect, test } from "vitest";
import { Progress } from "../../../../server/command-line/matrix/progress.ts";

/** ECMA-48: CR is 0/13; ERASE IN LINE without a parameter is CSI 4/11. */
const anew = "\r\u001b[K";

test("one line is written over, and taken away in the end", () => {
  const written: string[] = [];
  const progress = new Progress(3, (text) => written.push(text));
  progress.count({ mouse: "m", pc: "p", outcomes: [] });
  progress.count({ mouse: "m", pc: "p", outcomes: [{ kind: "cannot", stroke: "s", message: "" }] });
  progress.clear();
  expect(written).toEqual([
    `${anew}0 of 3 cells`,
    `${anew}1 of 3 cells`,
    `${anew}2 of 3 cells, 1 not passed`,
    anew,
  ]);
  expect(progress.done).toBe(2);
});
