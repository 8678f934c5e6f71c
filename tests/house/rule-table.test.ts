import { expect, test } from "vitest";
import { rowsOf, type SnippetMeta, tableOf } from "./rule-table.ts";

const snippet = (
  rule: string,
  expected: "wrong" | "right",
  found = 0,
  missed = 0,
  falseAlarms = 0,
): SnippetMeta => ({
  rule,
  expected,
  found,
  missed,
  falseAlarms,
});

test("a row for each rule counts snippets, faults found, faults missed and false alarms", () => {
  const rows = rowsOf([
    snippet("ps2/b", "right"),
    snippet("ps2/b", "wrong", 2, 1),
    snippet("board/a", "wrong", 1),
    snippet("ps2/b", "right", 0, 0, 1),
    snippet("ps2/b", "wrong", 1, 0, 1),
  ]);
  expect(tableOf(rows).split("\n")).toEqual([
    "rule     wrong snippets  faults found  missed  right snippets  false alarms",
    "board/a               1             1       0               0             0",
    "ps2/b                 2             3       1               2             2",
  ]);
});
