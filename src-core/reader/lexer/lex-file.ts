import type { NotUnderstood } from "../../finding.ts";
import type { Comment } from "../tokens.ts";
import { isBlank } from "./characters.ts";
import { type DirectivePiece, type LexedFile, makeToken, type Piece, type WorkToken } from "./lexed-file.ts";
import { type Language, Scanner } from "./scanner.ts";
import { joinLine, skipSplices, spliceEnd } from "./splices.ts";
import { includeGuard, linkBranches } from "./structure.ts";

const NEWLINE = 10;
const BACKSLASH = 92;
const SLASH = 47;
const STAR = 42;
const HASH = 35;
const LESS = 60;
const BYTE_ORDER_MARK = 0xfeff;
const HEADER_DIRECTIVES: ReadonlySet<string> = new Set(["include", "include_next", "import"]);
const NO_TOKENS: readonly WorkToken[] = [];
const NO_PROBLEMS: readonly NotUnderstood[] = [];

/** Cuts a file into preprocessing tokens, grouped into text and directives. Never throws. */
export function lexFile(file: string, text: string, language: Language): LexedFile {
  return new FileLexer(file, text, language).run();
}

class FileLexer {
  private readonly file: string;
  private readonly text: string;
  private readonly language: Language;
  private readonly scanner: Scanner;
  private readonly pieces: Piece[] = [];
  private readonly comments: Comment[] = [];
  private tokens: WorkToken[] = [];
  private problems: NotUnderstood[] = [];
  private position = 0;
  private space = false;
  private hash: WorkToken | undefined;

  constructor(file: string, text: string, language: Language) {
    this.file = file;
    this.text = text;
    this.language = language;
    this.scanner = new Scanner(text, language);
  }

  run(): LexedFile {
    const { text } = this;
    let isLineStart = true;
    if (text.charCodeAt(0) === BYTE_ORDER_MARK) this.position = 1;
    while (this.position < text.length) {
      const code = text.charCodeAt(this.position);
      if (code === NEWLINE) {
        this.position += 1;
        this.space = true;
        isLineStart = true;
        if (this.hash !== undefined) this.endDirective(this.position - 1);
      } else if (isBlank(code)) {
        this.position += 1;
        this.space = true;
      } else if (code === BACKSLASH && spliceEnd(text, this.position) >= 0) {
        this.position = skipSplices(text, this.position);
      } else if (code === SLASH && this.comment()) {
        this.space = true;
      } else if (isLineStart && this.beginsDirective(code)) {
        isLineStart = false;
      } else {
        isLineStart = false;
        if (code !== LESS || this.hash === undefined || !this.headerName()) this.token();
      }
    }
    if (this.hash !== undefined) this.endDirective(text.length);
    this.endText();
    return this.finish();
  }

  private finish(): LexedFile {
    const next = linkBranches(this.pieces);
    const pieces = this.pieces.map((piece, index) =>
      piece.kind === "text" ? piece : { ...piece, next: next[index] ?? this.pieces.length },
    );
    return {
      file: this.file,
      text: this.text,
      pieces,
      comments: this.comments,
      guard: includeGuard(pieces),
    };
  }

  /** Reads the comment at the position, if there is one; a splice may stand between its two first characters. */
  private comment(): boolean {
    const { text, position: start } = this;
    let second = start + 1;
    if (text.charCodeAt(second) === BACKSLASH) second = skipSplices(text, second);
    const mark = text.charCodeAt(second);
    if (mark !== SLASH && mark !== STAR) return false;
    this.position = mark === SLASH ? this.lineCommentEnd(second + 1) : this.blockCommentEnd(second + 1);
    this.comments.push({
      file: this.file,
      start,
      end: this.position,
      text: text.slice(start, this.position),
    });
    return true;
  }

  private lineCommentEnd(from: number): number {
    const { text } = this;
    let end = text.indexOf("\n", from);
    while (end >= 0) {
      let before = end - 1;
      while (before >= from && isBlank(text.charCodeAt(before))) before -= 1;
      if (before < from || text.charCodeAt(before) !== BACKSLASH) break;
      end = text.indexOf("\n", end + 1);
    }
    if (end < 0) return text.length;
    return text[end - 1] === "\r" ? end - 1 : end;
  }

  private blockCommentEnd(from: number): number {
    const { text } = this;
    for (let star = text.indexOf("*", from); star >= 0; star = text.indexOf("*", star + 1)) {
      const after = text.charCodeAt(star + 1) === BACKSLASH ? skipSplices(text, star + 1) : star + 1;
      if (text.charCodeAt(after) === SLASH) return after + 1;
    }
    this.note(this.position, this.position + 2, "The comment is not closed; */ has to end it.");
    return text.length;
  }

  private beginsDirective(code: number): boolean {
    const isDigraph = this.text.startsWith("%:", this.position);
    if (code !== HASH && !isDigraph) return false;
    this.endText();
    const end = this.position + (isDigraph ? 2 : 1);
    this.hash = makeToken(this.file, this.position, end, "punctuator", "#", this.space, undefined);
    this.position = end;
    this.space = false;
    return true;
  }

  /** `<name>` behind `#include`, taken as one token. */
  private headerName(): boolean {
    const [name, ...rest] = this.tokens;
    if (name === undefined || rest.length > 0 || !HEADER_DIRECTIVES.has(name.text)) return false;
    const { text, position: start } = this;
    const lineEnd = text.indexOf("\n", start);
    const close = text.indexOf(">", start);
    if (close < 0 || (lineEnd >= 0 && close > lineEnd)) return false;
    this.push(start, close + 1, "other", text.slice(start, close + 1));
    return true;
  }

  private token(): void {
    const { scanner, text, position: start } = this;
    scanner.scan(start);
    const { end } = scanner;
    const isQuoted = scanner.kind === "string" || scanner.kind === "character";
    if (scanner.spliced || (!isQuoted && text.charCodeAt(end) === BACKSLASH && this.mayContinue(end))) {
      this.splicedToken(start);
      return;
    }
    if (scanner.problem !== undefined) this.note(start, end, scanner.problem);
    this.push(start, end, scanner.kind, scanner.spelling ?? text.slice(start, end));
  }

  /** A splice follows whose next line does not begin with a blank: the token may go on there. */
  private mayContinue(end: number): boolean {
    const after = skipSplices(this.text, end);
    return after > end && after < this.text.length && !isBlank(this.text.charCodeAt(after));
  }

  /** Reads a token over line splices, looking at as little of the logical line as will do. */
  private splicedToken(start: number): void {
    for (let length = 64; ; length *= 8) {
      const joined = joinLine(this.text, start, length);
      const scanner = new Scanner(joined.text, this.language);
      scanner.scan(0);
      if (joined.cut && scanner.end >= joined.text.length - 4) continue;
      const end = joined.offsets[scanner.end - 1] ?? start;
      if (scanner.problem !== undefined) this.note(start, end + 1, scanner.problem);
      this.push(start, end + 1, scanner.kind, joined.text.slice(0, scanner.end));
      return;
    }
  }

  private push(start: number, end: number, kind: WorkToken["kind"], text: string): void {
    this.tokens.push(makeToken(this.file, start, end, kind, text, this.space, undefined));
    this.position = end;
    this.space = false;
  }

  private note(start: number, end: number, message: string): void {
    this.problems.push({ span: { file: this.file, start, end }, message });
  }

  private endText(): void {
    if (this.tokens.length === 0 && this.problems.length === 0) return;
    this.pieces.push({ kind: "text", tokens: this.tokens, problems: this.takeProblems() });
    this.tokens = [];
  }

  private endDirective(end: number): void {
    const { hash, tokens } = this;
    this.hash = undefined;
    this.tokens = [];
    if (hash === undefined) return;
    const [first] = tokens;
    const isNamed = first?.kind === "identifier";
    const piece: DirectivePiece = {
      kind: "directive",
      name: isNamed ? first : undefined,
      hash,
      end,
      tokens: isNamed ? tokens.slice(1) : tokens.length > 0 ? tokens : NO_TOKENS,
      problems: this.takeProblems(),
      next: 0,
    };
    this.pieces.push(piece);
  }

  private takeProblems(): readonly NotUnderstood[] {
    if (this.problems.length === 0) return NO_PROBLEMS;
    const { problems } = this;
    this.problems = [];
    return problems;
  }
}
