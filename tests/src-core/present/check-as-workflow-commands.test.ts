import { expect, test } from "vitest";
import type { Finding } from "../../../src-core/finding.ts";
import { checkAsWorkflowCommands } from "../../../src-core/present/ci/check-as-workflow-commands.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { sampleLines, sampleResult } from "./sample-result.ts";

// The form of workflow commands and their escapes: documentation of the runner and its toolkit, from memory.
test("a line for each finding and each gap, and a summary", () => {
  expect(checkAsWorkflowCommands(sampleResult, sampleLines).split("\n")).toEqual([
    "::error file=port/clock.c,line=3,endLine=3,col=12,endColumn=14,title=ps2/request-hold-short::" +
      "the clock is held for 60 us%0Afound 60 us%0Alimit at least 100 us%0Asource A timing table%0Afix Hold the clock for 100 us",
    "::warning file=port/uart.c,line=2,endLine=2,col=9,endColumn=16,title=serial/baud-error::the baud is off",
    "::notice file=port/uart.c,line=2,endLine=2,col=1,endColumn=6,title=not understood%2C so not checked::no such register",
    "1 error, 1 warning in 2 files read",
    "",
  ]);
});

test("signs that mean something are escaped; columns are not told over more than one line", () => {
  const finding: Finding = {
    rule: "board/clock-unknown",
    severity: "info",
    span: { file: "a,b:100%.c", start: 0, end: 4 },
    message: "100 % :: of it,\r\nand more",
    related: [],
    fixes: [],
  };
  const result = { findings: [finding], notUnderstood: [], settingsFaults: [], files: [], checked: [] };
  const [line] = checkAsWorkflowCommands(result, new FileLines(() => "a\nbcd")).split("\n");
  expect(line).toBe(
    "::notice file=a%2Cb%3A100%25.c,line=1,endLine=2,title=board/clock-unknown::100 %25 :: of it,%0D%0Aand more",
  );
});
