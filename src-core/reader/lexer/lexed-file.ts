import type { NotUnderstood } from "../../finding.ts";
import type { Comment, MacroUse, Token, TokenKind } from "../tokens.ts";

/** A token on its way through the preprocessor. */
export interface WorkToken extends Token {
  /** A macro's name that was met inside its own expansion and stays as it is (C11 6.10.3.4, 2). */
  readonly painted: boolean;
}

/** Every token is made here, so that all have one shape for the engine. */
export function makeToken(
  file: string,
  start: number,
  end: number,
  kind: TokenKind,
  text: string,
  space: boolean,
  macro: MacroUse | undefined,
): WorkToken {
  return { file, start, end, kind, text, space, macro, painted: false };
}

interface PieceBasis {
  readonly tokens: readonly WorkToken[];
  /** What is wrong with its tokens; said only where the piece is not skipped. */
  readonly problems: readonly NotUnderstood[];
}

export interface TextPiece extends PieceBasis {
  readonly kind: "text";
}

/** One directive; `tokens` are those behind its name. */
export interface DirectivePiece extends PieceBasis {
  readonly kind: "directive";
  /** Undefined for the null directive and for what is no name (`#!`, `# 12 "file"`). */
  readonly name: WorkToken | undefined;
  readonly hash: WorkToken;
  /** Where the line ends. */
  readonly end: number;
  /** Of `#if` and its kin: index of the piece with the next branch or `#endif`; the number of pieces if none. */
  readonly next: number;
}

export type Piece = TextPiece | DirectivePiece;

/** A file cut into lines of text and directives. Depends on its path, its text and the language alone. */
export interface LexedFile {
  readonly file: string;
  readonly text: string;
  readonly pieces: readonly Piece[];
  readonly comments: readonly Comment[];
  /** The macro of an include guard around the whole file. */
  readonly guard: string | undefined;
}
