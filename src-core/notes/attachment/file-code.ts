import type { LexedFile } from "../../reader/lexer/lexed-file.ts";
import type { Comment, Token } from "../../reader/tokens.ts";

/** A preprocessing directive as a stretch of a file. */
export interface DirectiveLine {
  /** `define`, `include`; empty for the null directive. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** What stands next to a comment: a token of the code or a directive. */
export type Neighbour =
  | { readonly kind: "token"; readonly index: number; readonly start: number; readonly end: number }
  | ({ readonly kind: "directive" } & DirectiveLine);

/** One file's code without comments, for finding what a note stands before or behind. */
export interface FileCode {
  readonly file: string;
  readonly text: string;
  /** Tokens outside directives, those of skipped `#if` groups included. */
  readonly tokens: readonly Token[];
  readonly directives: readonly DirectiveLine[];
}

export function fileCode(lexed: LexedFile): FileCode {
  const tokens: Token[] = [];
  const directives: DirectiveLine[] = [];
  for (const piece of lexed.pieces) {
    if (piece.kind === "text") for (const token of piece.tokens) tokens.push(token);
    else directives.push({ name: piece.name?.text ?? "", start: piece.hash.start, end: piece.end });
  }
  return { file: lexed.file, text: lexed.text, tokens, directives };
}

/** The first token or directive that starts at or behind `offset`. */
export function codeFrom(code: FileCode, offset: number): Neighbour | undefined {
  const index = firstFrom(code.tokens, offset);
  const token = code.tokens[index];
  const directive = code.directives[firstFrom(code.directives, offset)];
  if (directive !== undefined && (token === undefined || directive.start < token.start)) {
    return { kind: "directive", ...directive };
  }
  return token === undefined ? undefined : { kind: "token", index, start: token.start, end: token.end };
}

/** The last token or directive that starts before `offset`. */
function codeBefore(code: FileCode, offset: number): Neighbour | undefined {
  const index = firstFrom(code.tokens, offset) - 1;
  const token = code.tokens[index];
  const directive = code.directives[firstFrom(code.directives, offset) - 1];
  if (directive !== undefined && (token === undefined || directive.start > token.start)) {
    return { kind: "directive", ...directive };
  }
  return token === undefined ? undefined : { kind: "token", index, start: token.start, end: token.end };
}

/** What stands on the line before a comment that ends its line; undefined for a comment of its own. */
export function codeOnLineOf(code: FileCode, comment: Comment): Neighbour | undefined {
  const before = codeBefore(code, comment.start);
  if (before === undefined) return undefined;
  const end = before.kind === "directive" ? Math.min(before.end, comment.start) : before.end;
  if (code.text.slice(end, comment.start).includes("\n")) return undefined;
  const after = codeFrom(code, comment.end);
  if (after !== undefined && !code.text.slice(comment.end, after.start).includes("\n")) return undefined;
  return before;
}

/** Index of the first element that starts at or behind `offset`. */
export function firstFrom(sorted: readonly { readonly start: number }[], offset: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const element = sorted[middle];
    if (element !== undefined && element.start < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}
