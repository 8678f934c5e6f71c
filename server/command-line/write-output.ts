import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { errorCode, reasonOf } from "../files/disk-faults.ts";
import { CannotDo } from "./cannot-do.ts";
import type { Surroundings } from "./command.ts";

/** Writes a report to a file (relative to the working folder) or else to standard output. Throws `CannotDo`. */
export function writeOutput(
  report: string,
  output: string | undefined,
  { workingFolder, stdout }: Surroundings,
): void {
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
