import { folderOf, joinPath, nameOf } from "../paths.ts";
import type { SourceHost } from "../source-host.ts";

/**
 * Paths of files as folders list them. A disk that ignores case finds a header by any spelling of its name; under each it
 * would be another file than the one that the project has and the author edits.
 */
export class ListedPaths {
  private readonly host: SourceHost;
  private readonly known = new Map<string, string>();

  constructor(host: SourceHost) {
    this.host = host;
  }

  /** The path of a file that is there; that of the file `from` is known to be as listed, and so are those of its folders. */
  listed(path: string, from: string): string {
    if (this.host.ignoresCase !== true || from.startsWith(`${path}/`)) return path;
    const known = this.known.get(path);
    if (known !== undefined) return known;
    const folder = folderOf(path);
    const found = folder === undefined ? path : this.listedIn(this.listed(folder, from), nameOf(path));
    this.known.set(path, found);
    return found;
  }

  private listedIn(folder: string, name: string): string {
    const names = this.host.listFolder(folder).map((each) => each.replace(/\/$/, ""));
    const lower = name.toLowerCase();
    const listed = names.includes(name) ? name : names.find((each) => each.toLowerCase() === lower);
    return joinPath(folder, listed ?? name);
  }
}
