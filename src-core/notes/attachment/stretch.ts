import type { Comment } from "../../reader/tokens.ts";
import { codeFrom, codeOnLineOf, type DirectiveLine, type FileCode, firstFrom } from "./file-code.ts";
import { BRANCHES, branchAround, isRead, OPENING } from "./groups.ts";
import { firstTokenOf, lastTokenOf } from "./statement-extent.ts";
import type { Offsets } from "./visible-starts.ts";

/** The statement, declaration or directive that a note stands before, or at the end of. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  /** Name of the directive; undefined for code. */
  readonly directive: string | undefined;
}

export type StretchFound =
  | { readonly kind: "found"; readonly stretch: Stretch }
  | { readonly kind: "nothing-follows" }
  /** The note stands in a group that the preprocessor skips. */
  | { readonly kind: "rests" };

/**
 * What a note in `comment` belongs to. `read` has the offsets at which something begins that some unit has read.
 * Conditions between a note and its declaration are passed over, and so are their skipped branches.
 */
export function stretchOf(code: FileCode, comment: Comment, read: Offsets): StretchFound {
  const onLine = codeOnLineOf(code, comment);
  if (onLine?.kind === "directive") return judged(directiveStretch(onLine), read);
  if (onLine !== undefined) {
    const first = code.tokens[firstTokenOf(code.tokens, onLine.index)];
    return judged({ start: first?.start ?? onLine.start, end: comment.start, directive: undefined }, read);
  }
  return followingStretch(code, comment.end, read);
}

function judged(stretch: Stretch, read: Offsets): StretchFound {
  // Directives that define nothing leave no trace of having been read.
  if (stretch.directive !== undefined && stretch.directive !== "define") return { kind: "found", stretch };
  return read.has(stretch.start) ? { kind: "found", stretch } : { kind: "rests" };
}

function directiveStretch({ name, start, end }: DirectiveLine): Stretch {
  return { start, end, directive: name };
}

function followingStretch(code: FileCode, offset: number, read: Offsets): StretchFound {
  /** Conditions that were opened behind the note. */
  let depth = 0;
  let at = offset;
  for (;;) {
    const next = codeFrom(code, at);
    if (next === undefined) return depth > 0 ? { kind: "rests" } : { kind: "nothing-follows" };
    if (next.kind === "directive") {
      const isBranch = BRANCHES.has(next.name);
      if ((isBranch || next.name === "endif") && depth === 0) return endOfBranch(code, offset, read);
      if (OPENING.has(next.name)) depth++;
      else if (next.name === "endif") depth--;
      else if (!isBranch && next.name !== "" && (depth === 0 || read.has(next.start))) {
        return judged(directiveStretch(next), read);
      }
      at = next.end;
      continue;
    }
    const inside = behindWrapper(code, next.index);
    if (inside !== undefined) {
      at = inside;
    } else if (depth > 0 && !read.has(next.start)) {
      at = code.directives[firstFrom(code.directives, next.start)]?.start ?? code.text.length;
    } else {
      const last = code.tokens[lastTokenOf(code.tokens, next.index)];
      if (last === undefined || last.start < next.start) return { kind: "nothing-follows" };
      return judged({ start: next.start, end: last.end, directive: undefined }, read);
    }
  }
}

/** A note at the end of a branch has nothing to belong to; where none of the branch was read, it rests. */
function endOfBranch(code: FileCode, offset: number, read: Offsets): StretchFound {
  const branch = branchAround(code, offset);
  return branch !== undefined && isRead(branch, read) ? { kind: "nothing-follows" } : { kind: "rests" };
}

/** Where the inside of `extern "C" {`, `namespace x {` or an access label begins. */
function behindWrapper({ tokens }: FileCode, index: number): number | undefined {
  const [first, second, third] = tokens.slice(index, index + 3).map((token) => token.text);
  if (first === "extern" && second === '"C"' && third === "{") return tokens[index + 2]?.end;
  if (first === "namespace" && third === "{") return tokens[index + 2]?.end;
  if (first === "namespace" && second === "{") return tokens[index + 1]?.end;
  const isAccess = first === "public" || first === "private" || first === "protected";
  return isAccess && second === ":" ? tokens[index + 1]?.end : undefined;
}
