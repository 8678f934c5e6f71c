import { expect, test } from "vitest";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { checkAsText } from "../../../src-core/present/text/check-as-text.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import { sampleLines, sampleResult } from "./sample-result.ts";

test("a report shows each finding with its line, its limit and its fix", () => {
  expect(checkAsText(sampleResult, sampleLines, plain)).toBe(`port/clock.c

  3:12  error: the clock is held for 60 us  [ps2/request-hold-short]
      | \t_delay_us(60);
      | \t          ^^
      found   60 us
      limit   at least 100 us
      source  A timing table
      see     port/uart.c:1:9 another place
      fix     Hold the clock for 100 us

port/uart.c

  2:9  warning: the baud is off  [serial/baud-error]
      | UBRR0 = DIVISOR;
      |         ^^^^^^^

Not understood, so not checked
  port/uart.c:2:1  no such register

1 error, 1 warning in 2 files read
`);
});

test("without findings the report is one line", () => {
  const clean = { findings: [], notUnderstood: [], settingsFaults: [], files: ["a.c"], checked: [] };
  const lines = new FileLines(() => "");
  expect(checkAsText(clean, lines, plain)).toBe("no findings in 1 file read\n");
  expect(checkAsText({ ...clean, runs: 8 }, lines, plain)).toBe("no findings in 1 file read and 8 runs\n");
  expect(checkAsText({ ...clean, runs: 0 }, lines, plain)).toBe("no findings in 1 file read and no run\n");
});

test("colours change nothing but colours", () => {
  const inColour = checkAsText(sampleResult, sampleLines, coloured);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences are what is looked for
  const sequences = /\u001b\[[\d;]*m/g;
  expect(inColour).toMatch(sequences);
  expect(inColour.replace(sequences, "")).toBe(checkAsText(sampleResult, sampleLines, plain));
});

test("control characters of a source never reach the terminal, and long lines are cut around the mark", () => {
  const text = `${"a".repeat(500)}\u001b[2J${"b".repeat(500)}`;
  const finding = {
    rule: "board/divisor-range",
    severity: "error",
    span: { file: "x.c", start: 500, end: 504 },
    message: "m",
    related: [],
    fixes: [],
  } as const;
  const result = { findings: [finding], notUnderstood: [], settingsFaults: [], files: ["x.c"], checked: [] };
  const report = checkAsText(result, new FileLines(() => text), plain);
  expect(report).not.toContain("\u001b");
  const [shown = "", mark = ""] = report.split("\n").filter((line) => line.startsWith("      | "));
  expect(shown.length).toBeLessThan(120);
  expect(shown.slice(mark.indexOf("^"), mark.lastIndexOf("^") + 1)).toBe("\ufffd[2J");
});
