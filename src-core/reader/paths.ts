/**
 * Paths as a `SourceHost` knows them: `/` between names; `.` and the empty path are where the host starts. An absolute one
 * begins with `/`, a drive as in `C:/`, or a server of shares as in `//server/`.
 */

const rootPattern = /^(?:\/\/[^/]+\/|\/|[A-Za-z]:\/)/;

/** What an absolute path begins with; empty for one that starts where the host does. */
function rootOf(path: string): string {
  return rootPattern.exec(path)?.[0] ?? "";
}

export function isAbsolute(path: string): boolean {
  return rootOf(path) !== "";
}

/** `path` without a trailing `/` and without a leading `./`; `.` for the host's start. */
export function tidyPath(path: string): string {
  const root = rootOf(path);
  const bare = path.replace(/\/+$/, "");
  if (bare.length < root.length) return root;
  const tidy = bare.replace(/^(\.\/+)+/, "");
  return tidy === "" ? "." : tidy;
}

/**
 * A name within a folder, or an absolute path, which no folder changes; either may go up with `..`, which is resolved as far
 * as the folder's path reaches.
 */
export function joinPath(folder: string, name: string): string {
  const base = isAbsolute(name) ? rootOf(name) : folder === "." ? "" : folder;
  const root = rootOf(base);
  const below = base.slice(root.length);
  const parts = below === "" ? [] : below.split("/");
  for (const part of (isAbsolute(name) ? name.slice(root.length) : name).split("/")) {
    if (part === "" || part === ".") continue;
    const last = parts.at(-1);
    if (part !== ".." || last === "..") parts.push(part);
    else if (last !== undefined) parts.pop();
    else if (root === "") parts.push(part);
  }
  const joined = root + parts.join("/");
  return joined === "" ? "." : joined;
}

/** The folder that holds `path`; `.` for a bare name, undefined for a root. */
export function folderOf(path: string): string | undefined {
  const root = rootOf(path);
  if (path === "." || path === root || path.endsWith("..")) return undefined;
  const slash = path.lastIndexOf("/");
  if (slash < root.length) return root === "" ? "." : root;
  return path.slice(0, slash);
}

/** The last name of a path. */
export function nameOf(path: string): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

/** `path` as seen from `folder`, which holds it. */
export function relativeTo(folder: string, path: string): string {
  if (folder === "." || folder === "") return path;
  const prefix = folder.endsWith("/") ? folder : `${folder}/`;
  return path.startsWith(prefix) ? path.slice(prefix.length) : path;
}
