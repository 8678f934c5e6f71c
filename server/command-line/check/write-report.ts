import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import type { CheckResult } from "../../../src-core/check-result.ts";
import { checkAsJson } from "../../../src-core/present/json/check-as-json.ts";
import type { FileLines } from "../../../src-core/present/line-index.ts";
import { checkAsText } from "../../../src-core/present/text/check-as-text.ts";
import { coloured, type Paint, plain } from "../../../src-core/present/text/paint.ts";
import { errorCode, reasonOf } from "../../files/disk-faults.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Surroundings } from "../command.ts";
import type { Format } from "./formats.ts";

export interface ReportWishes {
  readonly format: Format;
  /** File to write instead of standard output; relative to the working folder. */
  readonly output: string | undefined;
}

/** Throws `CannotDo` where the output file cannot be written. */
export function writeReport(
  result: CheckResult,
  lines: FileLines,
  { format, output }: ReportWishes,
  { workingFolder, colours, stdout }: Surroundings,
): void {
  const paint = colours && output === undefined ? coloured : plain;
  const report = reportIn(format, result, lines, paint);
  if (output === undefined) {
    stdout(report);
    return;
  }
  try {
    writeFileSync(resolve(workingFolder, output), report);
  } catch (error) {
    throw new CannotDo(`cannot write ${output}: ${reasonOf(errorCode(error))}`);
  }
}

function reportIn(format: Format, result: CheckResult, lines: FileLines, paint: Paint): string {
  switch (format) {
    case "text":
      return checkAsText(result, lines, paint);
    case "json":
      return checkAsJson(result, lines);
  }
}
