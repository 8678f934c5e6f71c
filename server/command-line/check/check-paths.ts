import type { CheckResult } from "../../../src-core/check-result.ts";
import { FileLines } from "../../../src-core/present/line-index.ts";
import { mergeResults } from "../../../src-core/service/merge-results.ts";
import type { Service } from "../../../src-core/service/service.ts";
import type { DiskFiles } from "../../files/disk-files.ts";
import { CannotDo } from "../cannot-do.ts";
import { projectsOf, seenFrom } from "../projects-at.ts";
import { renameFiles } from "./rename-files.ts";

/**
 * Checks the projects in the given folders and the given files by themselves; an edgewise.json stands for its folder.
 * `withRuns` has whole firmware run. The result names files as seen from the working folder. Throws `CannotDo` for a path without firmware, a file that cannot be read and a broken edgewise.json.
 */
export function checkPaths(
  service: Service,
  files: DiskFiles,
  paths: readonly string[],
  workingFolder: string,
  withRuns: boolean,
): CheckResult {
  const asSeenFromHere = seenFrom(workingFolder);
  const results = projectsOf(service, paths, workingFolder).map(({ id }) => {
    if (withRuns) service.runWhole(id);
    else service.tryOut(id);
    return service.check(id);
  });
  const result = mergeResults(results.map((one) => renameFiles(one, asSeenFromHere)));
  refuseUnreadable(files, asSeenFromHere);
  refuseBrokenSettings(result, files);
  return result;
}

function refuseUnreadable(files: DiskFiles, asSeenFromHere: (file: string) => string): void {
  const [first, ...more] = files.unreadable;
  if (first === undefined) return;
  throw new CannotDo(
    `cannot read ${asSeenFromHere(first.path)}: ${first.reason}${andMore(more.length, "file")}`,
  );
}

function refuseBrokenSettings({ settingsFaults }: CheckResult, files: DiskFiles): void {
  const [first, ...more] = settingsFaults;
  if (first === undefined) return;
  const lines = new FileLines((file) => files.readText(file));
  const { line, column } = lines.of(first.span.file).placeOf(first.span.start);
  const place = `${first.span.file}:${line}:${column}`;
  throw new CannotDo(`${place}: ${first.message}${andMore(more.length, "fault")}`);
}

function andMore(count: number, noun: string): string {
  if (count === 0) return "";
  return ` (and ${count} more ${noun}${count === 1 ? "" : "s"})`;
}
