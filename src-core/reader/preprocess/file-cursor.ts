import type { DirectivePiece, LexedFile, Piece, WorkToken } from "../lexer/lexed-file.ts";
import type { DefineResult } from "./define.ts";
import type { ReadMode, TokenSource } from "./expander.ts";

/** Carries out directives for a cursor. */
export interface DirectiveRunner {
  /** Notes what is wrong with the tokens of a piece that is not skipped. */
  problems(piece: Piece): void;
  /** A directive that is no conditional. `mode` is `collect` inside the arguments of a call. */
  run(cursor: FileCursor, piece: DirectivePiece, mode: ReadMode): void;
  /** Whether the branch that begins with `piece` is taken; `name` is `if`, `ifdef`, `elif` and so on. */
  condition(cursor: FileCursor, piece: DirectivePiece, name: string): boolean;
  /** Says that a conditional stands where none can. */
  misplaced(piece: DirectivePiece, message: string): void;
}

interface Group {
  readonly opening: DirectivePiece;
  wasTaken: boolean;
  sawElse: boolean;
}

/** Reads one file's text line by line, carrying out its directives on the way. */
export class FileCursor implements TokenSource {
  readonly lexed: LexedFile;
  /** What the file's `#define`s mean, as far as they were read before. */
  readonly definitions: Map<DirectivePiece, DefineResult>;
  private readonly runner: DirectiveRunner;
  private piece = 0;
  private tokens: readonly WorkToken[] = [];
  private index = 0;
  private readonly groups: Group[] = [];
  /** `#line`: what to add to line numbers from here on, and the name to go by. */
  lineShift = 0;
  presumedName: string | undefined;

  constructor(lexed: LexedFile, definitions: Map<DirectivePiece, DefineResult>, runner: DirectiveRunner) {
    this.lexed = lexed;
    this.definitions = definitions;
    this.runner = runner;
  }

  next(mode: ReadMode): WorkToken | undefined {
    for (;;) {
      const token = this.tokens[this.index];
      if (token !== undefined) {
        this.index += 1;
        return token;
      }
      if (!this.advance(mode)) return undefined;
    }
  }

  unread(): void {
    if (this.index > 0) this.index -= 1;
  }

  plain(isMacro: (name: string) => boolean, into: WorkToken[]): void {
    const { tokens } = this;
    let { index } = this;
    for (let token = tokens[index]; token !== undefined; token = tokens[index]) {
      if (token.kind === "identifier" && isMacro(token.text)) break;
      into.push(token);
      index += 1;
    }
    this.index = index;
  }

  /** Goes on to the next piece. False at the end, and when a directive stands before a parenthesis looked for. */
  private advance(mode: ReadMode): boolean {
    const piece = this.lexed.pieces[this.piece];
    if (piece === undefined) {
      for (const group of this.groups)
        this.runner.misplaced(group.opening, "This conditional has no #endif.");
      this.groups.length = 0;
      return false;
    }
    if (piece.kind === "directive" && mode === "peek") return false;
    this.piece += 1;
    if (piece.problems.length > 0) this.runner.problems(piece);
    if (piece.kind === "text") {
      this.tokens = piece.tokens;
      this.index = 0;
    } else this.directive(piece, mode);
    return true;
  }

  private directive(piece: DirectivePiece, mode: ReadMode): void {
    const name = piece.name?.text;
    switch (name) {
      case "if":
      case "ifdef":
      case "ifndef": {
        const wasTaken = this.runner.condition(this, piece, name);
        this.groups.push({ opening: piece, wasTaken, sawElse: false });
        if (!wasTaken) this.seekBranch(piece.next);
        return;
      }
      case "elif":
      case "elifdef":
      case "elifndef":
      case "else":
      case "endif":
        this.leaveBranch(piece, name);
        return;
      default:
        this.runner.run(this, piece, mode);
    }
  }

  /** A branch that was being read ends at `piece`. */
  private leaveBranch(piece: DirectivePiece, name: string): void {
    const group = this.groups.at(-1);
    if (group === undefined) {
      this.runner.misplaced(piece, `#${name} without an #if before it.`);
      return;
    }
    if (name === "endif") {
      this.groups.pop();
      return;
    }
    this.checkOrder(group, piece, name);
    this.seekBranch(piece.next);
  }

  /** Skips from branch to branch, beginning with the one at `from`, until one is taken or the group ends. */
  private seekBranch(from: number): void {
    const group = this.groups.at(-1);
    let at = from;
    for (;;) {
      this.piece = at + 1;
      const piece = this.lexed.pieces[at];
      if (piece?.kind !== "directive" || group === undefined) return;
      const name = piece.name?.text ?? "";
      if (name === "endif") {
        this.groups.pop();
        return;
      }
      this.checkOrder(group, piece, name);
      if (!group.wasTaken && (name === "else" || this.runner.condition(this, piece, name))) {
        group.wasTaken = true;
        return;
      }
      at = piece.next;
    }
  }

  private checkOrder(group: Group, piece: DirectivePiece, name: string): void {
    if (group.sawElse) this.runner.misplaced(piece, `#${name} behind the #else of the same #if.`);
    if (name === "else") group.sawElse = true;
  }
}
