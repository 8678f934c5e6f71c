/**
 * Whether `path` fits `pattern`: `*` and `?` stand for characters other than `/`, `**` for any number of
 * folders. Both are relative, with `/`; a leading `./` of the pattern does not count. Takes time in proportion
 * to the product of both lengths, whatever the pattern.
 */
export function matchesGlob(pattern: string, path: string): boolean {
  return matchesNames(pattern.replace(/^(\.\/+)+/, "").split(/\/+/), path.split("/"));
}

/** Row by row over the pattern's names; `reached[i]` says that the names so far fit the first `i` of the path. */
function matchesNames(pattern: readonly string[], path: readonly string[]): boolean {
  let reached: readonly boolean[] = [true, ...path.map(() => false)];
  for (const name of pattern) {
    const next: boolean[] = [];
    for (let index = 0; index <= path.length; index++) {
      const here = reached[index] ?? false;
      const before = index > 0;
      if (name === "**") next.push(here || (before && (next[index - 1] ?? false)));
      else next.push(before && (reached[index - 1] ?? false) && matchesName(name, path[index - 1] ?? ""));
    }
    reached = next;
  }
  return reached[path.length] ?? false;
}

/** `*` and `?` within one name, going back only to the last `*`. */
function matchesName(pattern: string, name: string): boolean {
  let at = 0;
  let inName = 0;
  let star = -1;
  let resume = 0;
  while (inName < name.length) {
    const character = pattern[at];
    if (character === "*") {
      star = at++;
      resume = inName;
    } else if (character === "?" || (character !== undefined && character === name[inName])) {
      at++;
      inName++;
    } else if (star >= 0) {
      at = star + 1;
      inName = ++resume;
    } else return false;
  }
  while (pattern[at] === "*") at++;
  return at === pattern.length;
}
