import { statSync } from "node:fs";
import { basename, dirname, relative, resolve } from "node:path";
import type { ProjectEntry, Service } from "../../src-core/service/service.ts";
import { errorCode, reasonOf } from "../files/disk-faults.ts";
import { CannotDo } from "./cannot-do.ts";

/** The projects that several paths mean, each once, in the order of the paths; throws as `projectsAt` below. */
export function projectsOf(
  service: Service,
  paths: readonly string[],
  workingFolder: string,
): readonly ProjectEntry[] {
  const all = paths.flatMap((path) => projectsAt(service, path, workingFolder));
  return [...new Map(all.map((entry) => [entry.id, entry])).values()];
}

/**
 * The firmware projects that a path of the command line means; an edgewise.json stands for its folder. Throws `CannotDo`
 * for a path that is not there or holds no firmware.
 */
function projectsAt(service: Service, path: string, workingFolder: string): readonly ProjectEntry[] {
  const place = resolve(workingFolder, path);
  refuseMissing(path, place);
  // The whole path, so that settings are looked for above the working folder as well.
  const subject = basename(place) === "edgewise.json" ? dirname(place) : place;
  const projects = service.projectsAt(slashed(subject));
  if (projects.length === 0) {
    throw new CannotDo(
      `no firmware at ${path}: it is or holds no .c, .cpp or .ino file and no edgewise.json`,
    );
  }
  return projects;
}

/** Names files as they are seen from a folder. */
export function seenFrom(workingFolder: string): (file: string) => string {
  return (file) => slashed(relative(workingFolder, file)) || ".";
}

function refuseMissing(path: string, place: string): void {
  try {
    statSync(place);
  } catch (error) {
    const code = errorCode(error);
    if (code === "ENOENT" || code === "ENOTDIR") throw new CannotDo(`there is no file or folder ${path}`);
    throw new CannotDo(`cannot read ${path}: ${reasonOf(code)}`);
  }
}

function slashed(path: string): string {
  return path.replaceAll("\\", "/");
}
