import { expect, test } from "vitest";
import { checkAsJson } from "../../../src-core/present/json/check-as-json.ts";
import { sampleLines, sampleResult } from "./sample-result.ts";

// The shape is a contract with scripts: version 1. Lines and columns from 1, columns in UTF-16 units.
test("a result is one JSON document of version 1", () => {
  expect(JSON.parse(checkAsJson(sampleResult, sampleLines))).toEqual({
    version: 1,
    findings: [
      {
        rule: "ps2/request-hold-short",
        severity: "error",
        file: "port/clock.c",
        range: { start: { line: 3, column: 12 }, end: { line: 3, column: 14 } },
        message: "the clock is held for 60 us",
        measured: { value: 60, unit: "us" },
        limit: { atLeast: 100, unit: "us" },
        source: "A timing table",
        help: "docs/rules/ps2/request-hold-short.md",
        fixes: [
          {
            title: "Hold the clock for 100 us",
            edits: [
              {
                file: "port/clock.c",
                range: { start: { line: 3, column: 12 }, end: { line: 3, column: 14 } },
                text: "100",
              },
            ],
          },
        ],
      },
      {
        rule: "serial/baud-error",
        severity: "warning",
        file: "port/uart.c",
        range: { start: { line: 2, column: 9 }, end: { line: 2, column: 16 } },
        message: "the baud is off",
        help: "docs/rules/serial/baud-error.md",
        fixes: [],
      },
    ],
    notUnderstood: [
      {
        file: "port/uart.c",
        range: { start: { line: 2, column: 1 }, end: { line: 2, column: 6 } },
        message: "no such register",
      },
    ],
    summary: { errors: 1, warnings: 1, infos: 0, files: 2 },
  });
});

test("the document ends with a line feed, as text files do", () => {
  expect(checkAsJson(sampleResult, sampleLines)).toMatch(/\}\n$/);
});
