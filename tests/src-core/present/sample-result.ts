import type { CheckResult } from "../../../src-core/check-result.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";

/** Texts that the result below speaks of. */
const texts: Readonly<Record<string, string>> = {
  "port/clock.c": "void hold(void)\n{\n\t_delay_us(60);\n}\n",
  "port/uart.c": "#define DIVISOR 51\r\nUBRR0 = DIVISOR;\r\n",
};

export const sampleLines = new FileLines((file) => texts[file]);

/** One finding with all that a finding can have, one with nothing more than it must, and one gap. */
export const sampleResult: CheckResult = {
  findings: [
    {
      rule: "ps2/request-hold-short",
      severity: "error",
      span: { file: "port/clock.c", start: 29, end: 31 },
      message: "the clock is held for 60 us",
      measured: { value: 60, unit: "us" },
      limit: { atLeast: 100, unit: "us" },
      source: "A timing table",
      related: [{ span: { file: "port/uart.c", start: 8, end: 15 }, message: "another place" }],
      fixes: [
        {
          title: "Hold the clock for 100 us",
          edits: [{ span: { file: "port/clock.c", start: 29, end: 31 }, text: "100" }],
        },
      ],
    },
    {
      rule: "serial/baud-error",
      severity: "warning",
      span: { file: "port/uart.c", start: 28, end: 35 },
      message: "the baud is off",
      related: [],
      fixes: [],
    },
  ],
  notUnderstood: [{ span: { file: "port/uart.c", start: 20, end: 25 }, message: "no such register" }],
  settingsFaults: [],
  files: ["port/clock.c", "port/uart.c"],
  checked: ["ps2/request-hold-short", "serial/baud-error"],
};
