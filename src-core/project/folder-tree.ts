import { joinPath } from "../reader/paths.ts";
import type { SourceHost } from "../reader/source-host.ts";

/** A folder with all that is of interest below it. */
export interface Folder {
  readonly path: string;
  /** Names of its files, sorted. */
  readonly files: readonly string[];
  /** Sorted by path. */
  readonly folders: readonly Folder[];
}

/** Folders deeper than this, or more of them, are not looked at: links may lead around in circles. */
const MAX_DEPTH = 32;
const MAX_FOLDERS = 10_000;

/** What builds and package managers write; sources in there are copies or not the author's. */
export const NOT_SOURCES: ReadonlySet<string> = new Set([
  "node_modules",
  "build",
  "dist",
  "out",
  "output",
  "bin",
  "obj",
  "debug",
  "release",
]);

/** Reads what is below `path`, without hidden folders and build outputs. Never throws. */
export function readFolderTree(host: SourceHost, path: string): Folder {
  const budget = { left: MAX_FOLDERS };
  return readFolder(host, path, [], budget);
}

interface Ancestor {
  readonly path: string;
  readonly names: string;
}

function readFolder(
  host: SourceHost,
  path: string,
  ancestors: readonly Ancestor[],
  budget: { left: number },
): Folder {
  const listed = [...host.listFolder(path)].sort(byName);
  const here: Ancestor = { path, names: listed.join("\n") };
  const files = listed.filter((name) => !name.endsWith("/") && name !== "");
  if (ancestors.some((ancestor) => leadsBack(host, ancestor, here, files))) {
    return { path, files: [], folders: [] };
  }
  const folders: Folder[] = [];
  for (const entry of listed) {
    const name = entry.replace(/\/+$/, "");
    if (name === entry || !mayHoldSources(name) || ancestors.length >= MAX_DEPTH) continue;
    if (budget.left-- <= 0) break;
    folders.push(readFolder(host, joinPath(path, name), [...ancestors, here], budget));
  }
  return { path, files, folders };
}

/** The same names and the same first file below itself: a link back to the folder above. */
function leadsBack(host: SourceHost, above: Ancestor, here: Ancestor, files: readonly string[]): boolean {
  const [first] = files;
  if (first === undefined || above.names !== here.names) return false;
  return host.readText(joinPath(above.path, first)) === host.readText(joinPath(here.path, first));
}

function mayHoldSources(name: string): boolean {
  if (name === "" || name.includes("/") || name.startsWith(".")) return false;
  const lower = name.toLowerCase();
  return !NOT_SOURCES.has(lower) && !lower.startsWith("cmake-build");
}

function byName(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The folder and all below it, those left out for which `enters` is false, with all below them. */
export function* foldersIn(folder: Folder, enters: (inner: Folder) => boolean): Generator<Folder> {
  yield folder;
  for (const inner of folder.folders) {
    if (enters(inner)) yield* foldersIn(inner, enters);
  }
}
