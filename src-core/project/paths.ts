/** Paths as a `SourceHost` knows them: `/` between names; `.` and the empty path are where the host starts. */

/** `path` without a trailing `/` and without a leading `./`; `.` for the host's start. */
export function tidyPath(path: string): string {
  if (/^\/+$/.test(path)) return "/";
  const tidy = path.replace(/\/+$/, "").replace(/^(\.\/+)+/, "");
  return tidy === "" ? "." : tidy;
}

/** A name within a folder; either may go up with `..`, which is resolved as far as the folder's path reaches. */
export function joinPath(folder: string, name: string): string {
  if (name.startsWith("/") || /^[A-Za-z]:\//.test(name)) return tidyPath(name);
  const base = folder === "." || folder === "" ? [] : folder.split("/");
  for (const part of name.split("/")) {
    if (part === "" || part === ".") continue;
    const last = base.at(-1);
    if (part === ".." && last !== undefined && last !== "" && last !== "..") base.pop();
    else base.push(part);
  }
  const joined = base.join("/");
  if (joined === "") return folder.startsWith("/") ? "/" : ".";
  return joined;
}

/** The folder that holds `path`; `.` for a bare name, undefined for a root. */
export function folderOf(path: string): string | undefined {
  if (path === "." || path === "" || path === "/" || path.endsWith("..")) return undefined;
  const slash = path.lastIndexOf("/");
  if (slash < 0) return ".";
  return slash === 0 ? "/" : path.slice(0, slash);
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
