import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { CheckResult } from "../../../src-core/check-result.ts";
import type { Severity } from "../../../src-core/finding.ts";
import { checkAsWorkflowCommands } from "../../../src-core/present/ci/check-as-workflow-commands.ts";
import { checkAsJson } from "../../../src-core/present/json/check-as-json.ts";
import { checkAsJUnit } from "../../../src-core/present/junit/check-as-junit.ts";
import type { FileLines } from "../../../src-core/present/line-index.ts";
import { artifactLocation } from "../../../src-core/present/sarif/artifact-location.ts";
import { checkAsSarif } from "../../../src-core/present/sarif/check-as-sarif.ts";
import { checkAsText } from "../../../src-core/present/text/check-as-text.ts";
import { coloured, plain } from "../../../src-core/present/text/paint.ts";
import { ruleDescriptions } from "../../../src-core/service/rule-descriptions.ts";
import type { PackageFiles } from "../../package-files.ts";
import type { Surroundings } from "../command.ts";
import { writeOutput } from "../write-output.ts";
import type { Format } from "./formats.ts";

export interface ReportWishes {
  readonly format: Format;
  /** File to write instead of standard output; relative to the working folder. */
  readonly output: string | undefined;
}

/** What reports tell of this program. */
export interface About {
  readonly version: string;
  readonly packageFiles: PackageFiles;
}

/** A result and what is needed to show it. */
export interface Reportable {
  readonly result: CheckResult;
  readonly lines: FileLines;
  /** Levels whose findings fail this check. */
  readonly failing: ReadonlySet<Severity>;
}

/** Throws `CannotDo` where the output file cannot be written. */
export function writeReport(
  reportable: Reportable,
  wanted: ReportWishes,
  about: About,
  surroundings: Surroundings,
): void {
  writeOutput(reportIn(reportable, wanted, about, surroundings), wanted.output, surroundings);
}

function reportIn(
  { result, lines, failing }: Reportable,
  { format, output }: ReportWishes,
  { version, packageFiles }: About,
  { colours, workingFolder }: Surroundings,
): string {
  switch (format) {
    case "text":
      return checkAsText(result, lines, colours && output === undefined ? coloured : plain);
    case "json":
      return checkAsJson(result, lines);
    case "sarif":
      return checkAsSarif(result, lines, {
        version,
        rules: ruleDescriptions,
        pageUriOf: (rule) => packageFiles.pageUriOf(rule),
        locationOf: (file) =>
          artifactLocation(file, (outside) => pathToFileURL(resolve(workingFolder, outside)).href),
      });
    case "github":
      return checkAsWorkflowCommands(result, lines);
    case "junit":
      return checkAsJUnit(result, lines, failing);
  }
}
