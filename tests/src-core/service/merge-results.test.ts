import { expect, test } from "vitest";
import type { CheckResult } from "../../../src-core/check-result.ts";
import { mergeResults } from "../../../src-core/service/merge-results.ts";

function resultOf(message: string, file: string, start: number): CheckResult {
  const span = { file, start, end: start + 1 };
  return {
    findings: [{ rule: "serial/baud-error", severity: "error", span, message, related: [], fixes: [] }],
    notUnderstood: [{ span, message }],
    settingsFaults: [{ span, message, fix: undefined }],
    files: [file, "shared.h"],
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

test("of no projects nothing is said", () => {
  expect(mergeResults([])).toEqual({ findings: [], notUnderstood: [], settingsFaults: [], files: [] });
});
