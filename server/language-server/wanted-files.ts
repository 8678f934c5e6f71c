import { type FileSystemWatcher, WatchKind } from "vscode-languageserver";
import { foldersWithoutSources } from "../../src-core/service/foreign-folders.ts";
import { nameOf } from "../files/paths.ts";
import type { FileLimits, ReadFolderParams } from "./client-messages/files.ts";

const extensions = ["c", "cc", "cpp", "cxx", "h", "hh", "hpp", "hxx", "inc", "inl", "ino"];
const settingsFile = "edgewise.json";
/** Makefiles tell where a project begins. */
const makefiles = ["Makefile", "makefile", "GNUmakefile", "CMakeLists.txt"];

const comesOrChanges = WatchKind.Create | WatchKind.Change;

/**
 * Files whose change on disk may change what is found. Where a folder is deleted or gets another name, editors tell of it
 * and not of the files in it, and no pattern is for folders alone.
 */
export const watchedFiles: readonly FileSystemWatcher[] = [
  { globPattern: `**/${settingsFile}`, kind: comesOrChanges },
  { globPattern: `**/*.{${extensions.join(",")}}`, kind: comesOrChanges },
  { globPattern: `**/{${makefiles.join(",")}}`, kind: WatchKind.Create },
  { globPattern: "**/*", kind: WatchKind.Delete },
];

/** A firmware has a hundred files at most; a folder with more than these is likely to be something else. */
export const fileLimits: FileLimits = {
  folders: 2_000,
  depth: 16,
  files: 2_000,
  bytes: 16_000_000,
  bytesOfFile: 1_000_000,
};

/** What a client has to hand over of a folder that only it can read. */
export const wantedFiles: Omit<ReadFolderParams, "folder"> = {
  extensions,
  names: [...new Set([settingsFile, ...makefiles].map((name) => name.toLowerCase()))],
  leftOutFolders: [...foldersWithoutSources],
  limits: fileLimits,
};

/** Whether a file of this name may belong to a firmware. */
export function isWanted(path: string): boolean {
  const name = nameOf(path).toLowerCase();
  return wantedFiles.names.includes(name) || extensions.some((extension) => name.endsWith(`.${extension}`));
}
