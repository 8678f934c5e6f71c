import { expect, test } from "vitest";
import { renameFiles } from "../../../server/command-line/check/rename-files.ts";
import type { CheckResult } from "../../../src-core/check-result.ts";

test("every place of a result is renamed, and nothing else changes", () => {
  const span = { file: "/a/x.c", start: 1, end: 2 };
  const edits = [{ span, text: "t" }];
  const result: CheckResult = {
    findings: [
      {
        rule: "serial/baud-error",
        severity: "error",
        span,
        message: "/a/x.c",
        related: [{ span, message: "m" }],
        fixes: [{ title: "f", edits }],
      },
    ],
    notUnderstood: [{ span, message: "m" }],
    settingsFaults: [
      { span, message: "m", fix: { title: "f", edits } },
      { span, message: "m", fix: undefined },
    ],
    files: ["/a/x.c"],
    checked: ["ps2/wait-forever"],
  };
  const renamed = renameFiles(result, () => "x.c");
  const wanted = JSON.stringify(result).replaceAll('"file":"/a/x.c"', '"file":"x.c"');
  expect(JSON.stringify(renamed)).toBe(wanted.replace('"files":["/a/x.c"]', '"files":["x.c"]'));
});
