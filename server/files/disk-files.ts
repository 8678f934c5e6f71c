import { lstatSync, readdirSync, readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import type { SourceHost } from "../../src-core/reader/source-host.ts";
import { decodeText } from "./decode-text.ts";
import { errorCode, reasonOf } from "./disk-faults.ts";

/** A file that is there but could not be read. */
export interface Unreadable {
  readonly path: string;
  /** Such as "permission denied". */
  readonly reason: string;
}

/** The files of the disk. Paths are as given to the core, with `/`; relative ones start at `folder`. */
export class DiskFiles implements SourceHost {
  /** As the disks of these systems do unless they are set up otherwise. */
  readonly ignoresCase = process.platform === "win32" || process.platform === "darwin";
  readonly #folder: string;
  readonly #unreadable = new Map<string, Unreadable>();

  constructor(folder: string) {
    this.#folder = folder;
  }

  readText(path: string): string | undefined {
    const place = resolve(this.#folder, path);
    try {
      return decodeText(readFileSync(place));
    } catch (error) {
      const code = errorCode(error);
      if (code !== "EISDIR" && isThere(place)) this.#unreadable.set(path, { path, reason: linkReason(code) });
      return undefined;
    }
  }

  listFolder(path: string): readonly string[] {
    const place = resolve(this.#folder, path);
    try {
      const entries = readdirSync(place, { withFileTypes: true });
      return entries
        .map((entry) => {
          const leadsToFolder =
            entry.isDirectory() || (entry.isSymbolicLink() && isFolder(resolve(place, entry.name)));
          return leadsToFolder ? `${entry.name}/` : entry.name;
        })
        .sort();
    } catch (error) {
      const code = errorCode(error);
      if (code !== "ENOENT" && code !== "ENOTDIR") {
        this.#unreadable.set(path, { path, reason: reasonOf(code) });
      }
      return [];
    }
  }

  /** What was asked for so far, is there, and could not be read. */
  get unreadable(): readonly Unreadable[] {
    return [...this.#unreadable.values()];
  }
}

function isThere(place: string): boolean {
  try {
    lstatSync(place);
    return true;
  } catch {
    return false;
  }
}

function isFolder(place: string): boolean {
  try {
    return statSync(place).isDirectory();
  } catch {
    return false;
  }
}

/** A file that is listed but not found is a link whose target is gone. */
function linkReason(code: string): string {
  return code === "ENOENT" ? "it is a link to nothing" : reasonOf(code);
}
