import { foldersWithoutSources } from "../../src-core/service/foreign-folders.ts";
import type { FileLimits, ReadFolderParams } from "./client-messages/files.ts";

const extensions = ["c", "cc", "cpp", "cxx", "h", "hh", "hpp", "hxx", "inc", "inl", "ino"];
const settingsFile = "edgewise.json";

/** Files whose change on disk may change what is found. */
export const watchedFiles: readonly string[] = [`**/${settingsFile}`, `**/*.{${extensions.join(",")}}`];

/** A firmware has a hundred files at most; a folder with more than these is likely to be something else. */
export const fileLimits: FileLimits = {
  folders: 2_000,
  depth: 16,
  files: 2_000,
  bytes: 16_000_000,
  bytesOfFile: 1_000_000,
};

/** What a client has to hand over of a folder that only it can read; makefiles tell where a project begins. */
export const wantedFiles: Omit<ReadFolderParams, "folder"> = {
  extensions,
  names: [settingsFile, "makefile", "gnumakefile", "cmakelists.txt"],
  leftOutFolders: [...foldersWithoutSources],
  limits: fileLimits,
};
