import type { Span } from "../../finding.ts";
import type { DirectivePiece, LexedFile, Piece, WorkToken } from "../lexer/lexed-file.ts";
import type { Preprocessed } from "../tokens.ts";
import { INCLUDE_DEPTH, INCLUSIONS, UNIT_TOKENS } from "./budget.ts";
import { builtInValue } from "./built-ins.ts";
import { readDefine } from "./define.ts";
import { conditionOf } from "./directive-condition.ts";
import { Expander, type ReadMode } from "./expander.ts";
import { type DirectiveRunner, FileCursor } from "./file-cursor.ts";
import { readHeaderName } from "./header-name.ts";
import { type FoundFile, IncludeLookup } from "./include-lookup.ts";
import { initialMacros } from "./initial-macros.ts";
import { lineAt, lineStarts } from "./lines.ts";
import { MacroTable } from "./macro-table.ts";
import { isWorkspaceFile, Notebook } from "./notebook.ts";
import type { PreprocessRequest } from "./preprocess.ts";

/** Reads one translation unit: its files, their directives, the macros that stand meanwhile. */
export class UnitReader implements DirectiveRunner {
  private readonly request: PreprocessRequest;
  private readonly notebook = new Notebook();
  private readonly lookup: IncludeLookup;
  private readonly table: MacroTable;
  private readonly expander: Expander;
  private readonly tokens: WorkToken[] = [];
  private readonly open: FileCursor[] = [];
  private readonly once = new Set<string>();
  private readonly lines = new Map<string, readonly number[]>();
  /** The include in a workspace file that led into the built-in headers being read. */
  private includedFrom: Span | undefined;
  private inclusions = 0;
  private counter = 0;

  constructor(request: PreprocessRequest) {
    this.request = request;
    this.lookup = new IncludeLookup(request);
    this.table = new MacroTable(initialMacros(request));
    this.expander = new Expander({
      language: request.language,
      table: this.table,
      notebook: this.notebook,
      evaluateBuiltIn: (macro, name) =>
        builtInValue(macro, name, {
          lineOf: (file, offset) => this.lineOf(file, offset),
          nameOf: (file) => this.open.findLast((cursor) => cursor.lexed.file === file)?.presumedName ?? file,
          mainFile: request.mains[0] ?? "",
          includeLevel: this.open.length - 1,
          nextCounter: () => this.nextCounter(),
        }),
    });
  }

  read(): Preprocessed {
    const { mains, prelude } = this.request;
    for (const main of mains) this.notebook.file(main);
    const start: Span = { file: mains[0] ?? "", start: 0, end: 0 };
    for (const name of prelude) this.includeByName(name, start);
    for (const main of mains) {
      const text = this.lookup.read(main);
      if (text !== undefined) this.readFile({ file: main, text });
      else this.notebook.problem({ file: main, start: 0, end: 0 }, `${main} cannot be read.`);
    }
    const { files, definitions, uses, missing, problems } = this.notebook;
    return {
      tokens: this.tokens,
      files,
      macros: this.table.entries(),
      definitions,
      uses,
      missing,
      problems,
    };
  }

  // --- Files -------------------------------------------------------------------------------------------

  private includeByName(name: string, span: Span): void {
    const found = this.lookup.find(name, false, "", undefined);
    if (found === undefined) this.notebook.missingInclude(span, name);
    else this.includeFile(found, span);
  }

  private includeFile(found: FoundFile, span: Span): void {
    if (this.once.has(found.file)) return;
    const lexed = this.lex(found);
    if (lexed.guard !== undefined && this.table.get(lexed.guard) !== undefined) return;
    if (this.open.length >= INCLUDE_DEPTH) {
      const message = `Includes nest deeper than ${INCLUDE_DEPTH} files at ${found.file}; does a file include itself?`;
      this.notebook.problemOnce("include depth", this.placeFor(span), message);
      return;
    }
    this.inclusions += 1;
    if (this.inclusions > INCLUSIONS || this.tokens.length > UNIT_TOKENS) {
      const message = `The unit grows without end at ${found.file}; files included from here on are left out.`;
      this.notebook.problemOnce("unit size", this.placeFor(span), message);
      return;
    }
    const outer = this.includedFrom;
    this.includedFrom ??= isWorkspaceFile(found.file) ? undefined : span;
    this.readFile(found);
    this.includedFrom = outer;
  }

  private readFile(found: FoundFile): void {
    this.notebook.file(found.file);
    const cursor = new FileCursor(this.lex(found), this);
    this.open.push(cursor);
    this.expander.readingFrom(cursor, () => {
      for (let token = this.expander.expanded(); token !== undefined; token = this.expander.expanded()) {
        this.tokens.push(token);
      }
    });
    this.open.pop();
  }

  private lex(found: FoundFile): LexedFile {
    return this.request.cache.lexer.lex(found.file, found.text, this.request.language);
  }

  // --- What the cursor asks for ------------------------------------------------------------------------

  problems(_cursor: FileCursor, piece: Piece): void {
    const name = piece.kind === "directive" ? piece.name?.text : undefined;
    if (name === "error" || name === "warning" || name === "pragma") return;
    for (const problem of piece.problems) this.notebook.problem(this.placeFor(problem.span), problem.message);
  }

  misplaced(piece: DirectivePiece, message: string): void {
    this.say(piece, message);
  }

  condition(cursor: FileCursor, piece: DirectivePiece, name: string): boolean {
    const { request, expander, table, lookup } = this;
    const result = conditionOf(piece, name, {
      expander,
      table,
      isCpp: request.language === "c++",
      hasInclude: (header, isNext) =>
        lookup.find(
          header.name,
          header.isQuoted,
          cursor.lexed.file,
          isNext ? cursor.lexed.file : undefined,
        ) !== undefined,
    });
    if (result.problem !== undefined)
      this.notebook.problem(this.placeFor(result.problem.span), result.problem.message);
    return result.isTrue;
  }

  run(cursor: FileCursor, piece: DirectivePiece, mode: ReadMode): void {
    const name = piece.name?.text;
    switch (name) {
      case undefined:
        return;
      case "define":
        this.define(cursor, piece);
        return;
      case "undef": {
        const macro = piece.tokens[0];
        if (macro?.kind === "identifier") this.table.set(macro.text, undefined);
        else this.say(piece, "#undef needs a name.");
        return;
      }
      case "include":
      case "include_next":
      case "import":
        this.include(cursor, piece, name, mode);
        return;
      case "error":
      case "warning":
        this.say(piece, `#${name} ${this.textOf(cursor, piece)}`.trim());
        return;
      case "line":
        this.line(cursor, piece);
        return;
      case "pragma":
        if (piece.tokens[0]?.text === "once") this.once.add(cursor.lexed.file);
        return;
      case "ident":
      case "sccs":
      case "assert":
      case "unassert":
        return;
      default:
        this.say(piece, `#${name} is no directive.`);
    }
  }

  // --- Directives --------------------------------------------------------------------------------------

  private define(cursor: FileCursor, piece: DirectivePiece): void {
    const { definitions } = this.request.cache;
    let result = definitions.get(piece);
    if (result === undefined) {
      result = readDefine(piece, false);
      definitions.set(piece, result);
    }
    const { macro, problem } = result;
    if (problem !== undefined) this.notebook.problem(this.placeFor(problem.token), problem.message);
    if (macro === undefined) return;
    this.table.set(macro.name, macro);
    if (isWorkspaceFile(cursor.lexed.file)) this.notebook.definitions.push(macro);
  }

  private include(cursor: FileCursor, piece: DirectivePiece, name: string, mode: ReadMode): void {
    const header = readHeaderName(piece.tokens, (tokens) =>
      this.expander.readingList(tokens, () => this.expander.rest()),
    );
    if (header === undefined) {
      this.say(piece, `#${name} needs a file name in quotes or angle brackets.`);
      return;
    }
    if (mode === "collect") {
      this.say(piece, "An #include inside the arguments of a macro is not read.");
      return;
    }
    const { file } = cursor.lexed;
    const found = this.lookup.find(
      header.name,
      header.isQuoted,
      file,
      name === "include_next" ? file : undefined,
    );
    const span = this.spanOf(piece);
    if (found === undefined) this.notebook.missingInclude(this.placeFor(span), header.name);
    else {
      this.includeFile(found, span);
      if (name === "import") this.once.add(found.file);
    }
  }

  /** `#line 12 "name"` (C11 6.10.4). */
  private line(cursor: FileCursor, piece: DirectivePiece): void {
    const [number, name] = this.expander.readingList(piece.tokens, () => this.expander.rest());
    const line = /^[0-9]+$/.test(number?.text ?? "") ? Number.parseInt(number?.text ?? "", 10) : undefined;
    if (line === undefined) {
      this.say(piece, "#line needs a line number.");
      return;
    }
    cursor.lineShift = line - 1 - this.physicalLine(cursor.lexed.file, piece.hash.start);
    if (name?.kind === "string") cursor.presumedName = name.text.slice(1, -1);
  }

  // --- Places ------------------------------------------------------------------------------------------

  private say(piece: DirectivePiece, message: string): void {
    this.notebook.problem(this.placeFor(this.spanOf(piece)), message);
  }

  private spanOf(piece: DirectivePiece): Span {
    const last = piece.tokens.at(-1) ?? piece.name ?? piece.hash;
    return { file: piece.hash.file, start: piece.hash.start, end: last.end };
  }

  /** A place in the workspace: for one inside a built-in header, the include that led there. */
  private placeFor(span: Span): Span {
    return isWorkspaceFile(span.file) ? span : (this.includedFrom ?? span);
  }

  private textOf(cursor: FileCursor, piece: DirectivePiece): string {
    const first = piece.tokens[0];
    return first === undefined ? "" : cursor.lexed.text.slice(first.start, piece.end).trim();
  }

  private physicalLine(file: string, offset: number): number {
    let starts = this.lines.get(file);
    if (starts === undefined) {
      const cursor = this.open.findLast((open) => open.lexed.file === file);
      starts = lineStarts(cursor?.lexed.text ?? "");
      this.lines.set(file, starts);
    }
    return lineAt(starts, offset);
  }

  private lineOf(file: string, offset: number): number {
    const shift = this.open.findLast((cursor) => cursor.lexed.file === file)?.lineShift ?? 0;
    return this.physicalLine(file, offset) + shift;
  }

  private nextCounter(): number {
    this.counter += 1;
    return this.counter - 1;
  }
}
