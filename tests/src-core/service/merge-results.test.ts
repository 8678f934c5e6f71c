import { expect, test } from "vitest";
import type { CheckResult } from "../../../src-core/check-result.ts";
import { mergeResults } from "../../../src-core/service/merge-results.ts";

function resultOf(
  message: string,
  file: string,
  start: number,
  checked: readonly string[] = ["serial/baud-error"],
): CheckResult {
  const span = { file, start, end: start + 1 };
  return {
    findings: [{ rule: "serial/baud-error", severity: "error", span, message, related: [], fixes: [] }],
    notUnderstood: [{ span, message }],
    settingsFaults: [{ span, message, fix: undefined }],
    files: [file, "shared.h"],
    checked,
  };
}

test("what two projects say alike is said once, in order of file and place", () => {
  const merged = mergeResults([
    resultOf("b", "b.c", 1),
    resultOf("late", "a.c", 9),
    resultOf("early", "a.c", 2),
    resultOf("early", "a.c", 2),
  ]);
  expect(merged.findings.map(({ message }) => message)).toEqual(["early", "late", "b"]);
  expect(merged.notUnderstood).toHaveLength(3);
  expect(merged.settingsFaults).toHaveLength(3);
  expect(merged.files).toEqual(["a.c", "b.c", "shared.h"]);
});

test("a rule was checked where it was in every project", () => {
  const merged = mergeResults([
    resultOf("a", "a.c", 1, ["board/pin-conflict", "serial/baud-error"]),
    resultOf("b", "b.c", 1, ["serial/baud-error", "ps2/no-pullup"]),
  ]);
  expect(merged.checked).toEqual(["serial/baud-error"]);
});

test("of no projects nothing is said", () => {
  expect(mergeResults([])).toEqual({
    findings: [],
    notUnderstood: [],
    settingsFaults: [],
    files: [],
    checked: [],
  });
});

test("runs of all projects are counted together, where any was to be run", () => {
  const [one, other] = [resultOf("a", "a.c", 1), resultOf("b", "b.c", 1)];
  expect(mergeResults([one, other]).runs).toBeUndefined();
  expect(mergeResults([{ ...one, runs: 8 }, other]).runs).toBe(8);
  expect(
    mergeResults([
      { ...one, runs: 8 },
      { ...other, runs: 1 },
    ]).runs,
  ).toBe(9);
});
