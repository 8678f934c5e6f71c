/** Paths with `/`, as the core has them, whatever the platform. */

/** The last name of a path. */
export function nameOf(path: string): string {
  return path.replace(/\/+$/, "").replace(/^.*\//, "");
}

/** `path` as seen from `folder`, with `..` where it lies outside; both are absolute or both start at the same place. */
export function seenFrom(folder: string, path: string): string {
  const from = partsOf(folder);
  const to = partsOf(path);
  let common = 0;
  while (common < from.length && common < to.length && from[common] === to[common]) common++;
  return [...from.slice(common).map(() => ".."), ...to.slice(common)].join("/");
}

/** What `seenFrom` the folder looks so. */
export function below(folder: string, path: string): string {
  const parts = folder.replace(/\/+$/, "").split("/");
  for (const part of partsOf(path)) {
    if (part === "..") parts.pop();
    else parts.push(part);
  }
  return parts.join("/");
}

export function isBelow(folder: string, path: string): boolean {
  return path.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
}

/** Whether `path` is the folder, or below it. */
export function isWithin(folder: string, path: string): boolean {
  return path === folder || isBelow(folder, path);
}

function partsOf(path: string): readonly string[] {
  return path.split("/").filter((part) => part !== "" && part !== ".");
}
