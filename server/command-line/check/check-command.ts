import type { CheckResult } from "../../../src-core/check-result.ts";
import type { Severity } from "../../../src-core/finding.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { countFindings } from "../../../src-core/present/summary.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Service } from "../../../src-core/service/service.ts";
import { DiskFiles } from "../../files/disk-files.ts";
import { CannotDo } from "../cannot-do.ts";
import type { Arguments, Command, Surroundings } from "../command.ts";
import { type ExitStatus, exitStatus } from "../exit-status.ts";
import { BaselineFile } from "./baseline-file.ts";
import { checkPaths } from "./check-paths.ts";
import { type Format, formatNamed, formats } from "./formats.ts";
import { type About, writeReport } from "./write-report.ts";

/** `edgewise check`. */
export function checkCommand(makeService: (host: SourceHost) => Promise<Service>, about: About): Command {
  return {
    name: "check",
    operands: "[PATH...] [OPTION...]",
    summary: "Checks the firmware in folders or files (the working folder unless given).",
    options: [
      { name: "format", value: formats.join("|"), help: "what the report looks like; text unless given" },
      { name: "output", value: "FILE", help: "write the report to FILE instead of the terminal" },
      {
        name: "max-warnings",
        value: "N",
        help: "fail when there are more than N warnings; no bound unless given",
      },
      {
        name: "without-runs",
        value: undefined,
        help: "do not run the whole firmware: quicker, and finds less",
      },
      { name: "baseline", value: "FILE", help: "leave out the findings that FILE accepts" },
      { name: "accept-all", value: undefined, help: "first write all that is found now into the baseline" },
    ],
    details: [
      "Text, encoders and decoders are checked first. A firmware whose chip, clock, wires and report layout are known then runs whole, with a few virtual mice, at a few virtual PCs; edgewise simulate repeats such a run, edgewise matrix makes all of them.",
      "Exit status: 0 when nothing fails the check, 1 when it fails, 2 when it could not be done.",
      "A baseline knows findings again by rule, file and line of code, not by line number, and says which it accepts in vain.",
      "Errors fail the check; warnings only where there are more than --max-warnings; infos never.",
      'Levels of single rules are set in edgewise.json: "rules": { "board/delay-in-isr": "warning" }.',
    ],
    async run(given, surroundings) {
      const wanted = wishesOf(given);
      const files = new DiskFiles(surroundings.workingFolder);
      return check(await makeService(files), files, wanted, about, surroundings);
    },
  };
}

interface Wishes {
  readonly paths: readonly string[];
  readonly format: Format;
  readonly output: string | undefined;
  /** Infinity for no bound. */
  readonly maxWarnings: number;
  readonly baseline: string | undefined;
  readonly acceptsAll: boolean;
  readonly withRuns: boolean;
}

function wishesOf({ operands, options }: Arguments): Wishes {
  const baseline = options.get("baseline");
  const acceptsAll = options.has("accept-all");
  if (acceptsAll && baseline === undefined) {
    throw new CannotDo("--accept-all needs a file to write: --baseline FILE");
  }
  return {
    paths: operands.length === 0 ? ["."] : operands,
    format: formatNamed(options.get("format") ?? "text"),
    output: options.get("output"),
    maxWarnings: maxWarningsOf(options.get("max-warnings")),
    baseline,
    acceptsAll,
    withRuns: !options.has("without-runs"),
  };
}

function maxWarningsOf(text: string | undefined): number {
  if (text === undefined) return Number.POSITIVE_INFINITY;
  if (!/^\d+$/.test(text)) throw new CannotDo(`--max-warnings needs a whole number from 0, not "${text}"`);
  return Number(text);
}

function check(
  service: Service,
  files: DiskFiles,
  wanted: Wishes,
  about: About,
  surroundings: Surroundings,
): ExitStatus {
  const found = checkPaths(service, files, wanted.paths, surroundings.workingFolder, wanted.withRuns);
  const lines = new FileLines((file) => files.readText(file));
  const result = withoutAccepted(found, lines, wanted, surroundings);
  const failing = failingLevels(result, wanted);
  writeReport({ result, lines, failing }, wanted, about, surroundings);
  const fails = result.findings.some(({ severity }) => failing.has(severity));
  return fails ? exitStatus.findings : exitStatus.clean;
}

function failingLevels(result: CheckResult, { maxWarnings }: Wishes): ReadonlySet<Severity> {
  return new Set(countFindings(result).warnings > maxWarnings ? ["error", "warning"] : ["error"]);
}

function withoutAccepted(
  found: CheckResult,
  lines: FileLines,
  { baseline, acceptsAll }: Wishes,
  surroundings: Surroundings,
): CheckResult {
  if (baseline === undefined) return found;
  const file = new BaselineFile(baseline, lines, surroundings);
  if (acceptsAll) file.accept(found);
  return file.applyTo(found);
}
