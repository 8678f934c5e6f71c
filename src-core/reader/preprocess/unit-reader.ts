import type { Span } from "../../finding.ts";
import type { DirectivePiece, LexedFile, Piece, WorkToken } from "../lexer/lexed-file.ts";
import type { Preprocessed } from "../tokens.ts";
import { INCLUDE_DEPTH, INCLUSIONS, UNIT_TOKENS } from "./budget.ts";
import { type BuiltInPlace, builtInValue } from "./built-ins.ts";
import { readDefine } from "./define.ts";
import { conditionOf } from "./directive-condition.ts";
import { Expander, type ReadMode } from "./expander.ts";
import { type DirectiveRunner, FileCursor } from "./file-cursor.ts";
import { readHeaderName } from "./header-name.ts";
import { type FoundFile, IncludeLookup } from "./include-lookup.ts";
import { initialMacros } from "./initial-macros.ts";
import { addKept, findKept, newLookupRecord } from "./kept-inclusions.ts";
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
    this.expander = new Expander(request.language, this.table, {
      builtIn: (macro, name) => builtInValue(macro, name, this.builtInPlace()),
      use: (use) => {
        if (isWorkspaceFile(use.call.file)) this.notebook.uses.push(use);
      },
      problem: (kind, span, message) => this.say(kind, span, message),
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
    if (found === undefined) this.missing(span, name);
    else this.includeFile(found, span);
  }

  private includeFile(found: FoundFile, span: Span): void {
    if (this.isReadOnce(found.file)) return;
    const lexed = this.lex(found);
    if (lexed.guard !== undefined && this.table.get(lexed.guard) !== undefined) return;
    if (this.open.length >= INCLUDE_DEPTH) {
      const message = `Includes nest deeper than ${INCLUDE_DEPTH} files at ${found.file}; does a file include itself?`;
      this.say("include depth", span, message);
      return;
    }
    this.inclusions += 1;
    if (this.inclusions > INCLUSIONS || this.tokens.length > UNIT_TOKENS) {
      const message = `The unit grows without end at ${found.file}; files included from here on are left out.`;
      this.say("unit size", span, message);
      return;
    }
    if (isWorkspaceFile(found.file) || this.includedFrom !== undefined) {
      this.readFile(found);
      return;
    }
    this.includedFrom = span;
    this.includeBuiltIn(found);
    this.includedFrom = undefined;
  }

  /** Reads a built-in header, or repeats an inclusion of it that came out as this one would. */
  private includeBuiltIn(found: FoundFile): void {
    const { lookup, table, once, request } = this;
    const { inclusions } = request.cache;
    const key = `${request.language} ${found.file}`;
    const kept = findKept(inclusions.get(key), found, {
      table,
      once,
      readText: (path) => lookup.read(path),
      standIn: (name) => lookup.standIn(name),
    });
    if (kept !== undefined) {
      table.repeat(kept.table);
      for (const file of kept.lookups.nowRead) once.add(file);
      for (const token of kept.tokens) this.tokens.push(token);
      return;
    }
    const record = newLookupRecord();
    const tableRecord = table.startRecord();
    const start = this.tokens.length;
    lookup.record = record;
    this.readFile(found);
    lookup.record = undefined;
    table.endRecord(tableRecord);
    if (record.mustRepeat) return;
    const tokens = this.tokens.slice(start);
    const made = { text: found.text, table: tableRecord, tokens, lookups: record };
    inclusions.set(key, addKept(inclusions.get(key), made));
  }

  private isReadOnce(file: string): boolean {
    const isRead = this.once.has(file);
    const { record } = this.lookup;
    if (record !== undefined && !record.nowRead.has(file) && !record.wasRead.has(file)) {
      record.wasRead.set(file, isRead);
    }
    return isRead;
  }

  private readOnce(file: string): void {
    this.once.add(file);
    this.lookup.record?.nowRead.add(file);
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
    for (const problem of piece.problems) this.say(undefined, problem.span, problem.message);
  }

  misplaced(piece: DirectivePiece, message: string): void {
    this.sayOf(piece, message);
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
    if (result.problem !== undefined) this.say(undefined, result.problem.span, result.problem.message);
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
        else this.sayOf(piece, "#undef needs a name.");
        return;
      }
      case "include":
      case "include_next":
      case "import":
        this.include(cursor, piece, name, mode);
        return;
      case "error":
      case "warning":
        this.sayOf(piece, `#${name} ${this.textOf(cursor, piece)}`.trim());
        return;
      case "line":
        this.line(cursor, piece);
        return;
      case "pragma":
        if (piece.tokens[0]?.text === "once") this.readOnce(cursor.lexed.file);
        return;
      case "ident":
      case "sccs":
      case "assert":
      case "unassert":
        return;
      default:
        this.sayOf(piece, `#${name} is no directive.`);
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
    if (problem !== undefined) this.say(undefined, problem.token, problem.message);
    if (macro === undefined) return;
    this.table.set(macro.name, macro);
    if (isWorkspaceFile(cursor.lexed.file)) this.notebook.definitions.push(macro);
  }

  private include(cursor: FileCursor, piece: DirectivePiece, name: string, mode: ReadMode): void {
    const header = readHeaderName(piece.tokens, (tokens) =>
      this.expander.readingList(tokens, () => this.expander.rest()),
    );
    if (header === undefined) {
      this.sayOf(piece, `#${name} needs a file name in quotes or angle brackets.`);
      return;
    }
    if (mode === "collect") {
      this.sayOf(piece, "An #include inside the arguments of a macro is not read.");
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
    if (found === undefined) this.missing(span, header.name);
    else {
      this.includeFile(found, span);
      if (name === "import") this.readOnce(found.file);
    }
  }

  /** `#line 12 "name"` (C11 6.10.4). */
  private line(cursor: FileCursor, piece: DirectivePiece): void {
    const [number, name] = this.expander.readingList(piece.tokens, () => this.expander.rest());
    const line = /^[0-9]+$/.test(number?.text ?? "") ? Number.parseInt(number?.text ?? "", 10) : undefined;
    if (line === undefined) {
      this.sayOf(piece, "#line needs a line number.");
      return;
    }
    cursor.lineShift = line - 1 - this.physicalLine(cursor.lexed.file, piece.hash.start);
    if (name?.kind === "string") cursor.presumedName = name.text.slice(1, -1);
  }

  // --- Places ------------------------------------------------------------------------------------------

  /** Notes a problem, once for all of its kind where that has a name. */
  private say(kind: string | undefined, span: Span, message: string): void {
    if (this.lookup.record !== undefined) this.lookup.record.mustRepeat = true;
    if (kind === undefined) this.notebook.problem(this.placeFor(span), message);
    else this.notebook.problemOnce(kind, this.placeFor(span), message);
  }

  private sayOf(piece: DirectivePiece, message: string): void {
    this.say(undefined, this.spanOf(piece), message);
  }

  private missing(span: Span, name: string): void {
    if (this.lookup.record !== undefined) this.lookup.record.mustRepeat = true;
    this.notebook.missingInclude(this.placeFor(span), name);
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

  private builtInPlace(): BuiltInPlace {
    return {
      lineOf: (file, offset) => this.lineOf(file, offset),
      nameOf: (file) => this.open.findLast((cursor) => cursor.lexed.file === file)?.presumedName ?? file,
      mainFile: this.request.mains[0] ?? "",
      includeLevel: this.open.length - 1,
      nextCounter: () => this.nextCounter(),
    };
  }

  private nextCounter(): number {
    if (this.lookup.record !== undefined) this.lookup.record.mustRepeat = true;
    this.counter += 1;
    return this.counter - 1;
  }
}
