import { type DirectiveLine, type FileCode, firstFrom } from "./file-code.ts";
import type { Offsets } from "./visible-starts.ts";

/** Directives that open a conditional group, and those that begin another branch of it. */
export const OPENING: ReadonlySet<string> = new Set(["if", "ifdef", "ifndef"]);
export const BRANCHES: ReadonlySet<string> = new Set(["elif", "elifdef", "elifndef", "else"]);

/** One branch of a conditional group: what stands between two of its directives. */
export interface Branch {
  readonly start: number;
  readonly end: number;
}

/** The innermost branch around `offset`; undefined outside all groups. */
export function branchAround(code: FileCode, offset: number): Branch | undefined {
  const index = firstFrom(code.directives, offset);
  const opening = search(code.directives, index - 1, -1);
  if (opening === undefined) return undefined;
  const closing = search(code.directives, index, 1);
  return { start: opening.end, end: closing?.start ?? code.text.length };
}

/** The next directive of the group that surrounds the place, groups within it passed over. */
function search(directives: readonly DirectiveLine[], from: number, step: 1 | -1): DirectiveLine | undefined {
  let depth = 0;
  for (let index = from; ; index += step) {
    const directive = directives[index];
    if (directive === undefined) return undefined;
    const opens = OPENING.has(directive.name);
    const closes = directive.name === "endif";
    const entersInner = step > 0 ? opens : closes;
    const leavesInner = step > 0 ? closes : opens;
    if (depth === 0 && (leavesInner || BRANCHES.has(directive.name))) return directive;
    if (entersInner) depth++;
    else if (leavesInner) depth--;
  }
}

/** Whether something in the branch was read. */
export function isRead(branch: Branch, read: Offsets): boolean {
  return read.anyIn(branch.start, branch.end);
}

/** Whether `offset` stands in a branch with code of which nothing was read. */
export function isSkipped(code: FileCode, offset: number, read: Offsets): boolean {
  const branch = branchAround(code, offset);
  if (branch === undefined || isRead(branch, read)) return false;
  const token = code.tokens[firstFrom(code.tokens, branch.start)];
  const defines = code.directives.slice(firstFrom(code.directives, branch.start));
  const define = defines.find((directive) => directive.name === "define");
  return (token?.start ?? branch.end) < branch.end || (define?.start ?? branch.end) < branch.end;
}
