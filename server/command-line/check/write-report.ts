import type { CheckResult } from "../../../src-core/check-result.ts";
import { checkAsJson } from "../../../src-core/present/json/check-as-json.ts";
import type { FileLines } from "../../../src-core/present/line-index.ts";
import { checkAsText } from "../../../src-core/present/text/check-as-text.ts";
import { coloured, type Paint, plain } from "../../../src-core/present/text/paint.ts";
import type { Surroundings } from "../command.ts";
import { writeOutput } from "../write-output.ts";
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
  surroundings: Surroundings,
): void {
  const paint = surroundings.colours && output === undefined ? coloured : plain;
  writeOutput(reportIn(format, result, lines, paint), output, surroundings);
}

function reportIn(format: Format, result: CheckResult, lines: FileLines, paint: Paint): string {
  switch (format) {
    case "text":
      return checkAsText(result, lines, paint);
    case "json":
      return checkAsJson(result, lines);
  }
}
