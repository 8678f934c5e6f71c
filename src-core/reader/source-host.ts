/**
 * The only way in which the core sees files. A front end hands one over: over a checkout, over unsaved
 * buffers, over a snapshot sent to a web worker, or over a record in a test.
 */
export interface SourceHost {
  /** The file's text, or undefined where there is none that can be read. Never throws. */
  readText(path: string): string | undefined;
  /** Names in a folder, folders ending in `/`; empty where there is no such folder. Never throws. */
  listFolder(path: string): readonly string[];
  /** Whether a file is found by other spellings than the one that its folder lists, `Ring.h` for `ring.h`. */
  readonly ignoresCase?: boolean;
}

/** A host over plain records: path to text. For tests and for snapshots. */
export function hostOfFiles(files: Readonly<Record<string, string>>): SourceHost {
  return {
    readText: (path) => files[path],
    listFolder(path) {
      const prefix = path === "" || path === "." ? "" : `${path.replace(/\/+$/, "")}/`;
      const names = new Set<string>();
      for (const file of Object.keys(files)) {
        if (!file.startsWith(prefix)) continue;
        const rest = file.slice(prefix.length);
        const slash = rest.indexOf("/");
        names.add(slash < 0 ? rest : rest.slice(0, slash + 1));
      }
      return [...names].sort();
    },
  };
}
