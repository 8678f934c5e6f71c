import type { Span } from "../../finding.ts";
import type { DirectivePiece, LexedFile, Piece, WorkToken } from "../lexer/lexed-file.ts";
import type { Preprocessed } from "../tokens.ts";
import { builtInValue } from "./built-ins.ts";
import { readDefine } from "./define.ts";
import { conditionOf } from "./directive-condition.ts";
import { Expander, type ReadMode } from "./expander.ts";
import { type DirectiveRunner, FileCursor } from "./file-cursor.ts";
import { readHeaderName } from "./header-name.ts";
import { IncludeLookup } from "./include-lookup.ts";
import { Inclusions } from "./inclusions.ts";
import { initialMacros } from "./initial-macros.ts";
import { LinePlaces } from "./lines.ts";
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
  private readonly inclusions: Inclusions;
  private readonly tokens: WorkToken[] = [];
  private readonly open: FileCursor[] = [];
  private readonly lines = new LinePlaces(this.open);
  private counter = 0;

  constructor(request: PreprocessRequest) {
    this.request = request;
    this.lookup = new IncludeLookup(request);
    this.table = new MacroTable(initialMacros(request));
    this.expander = this.makeExpander();
    this.inclusions = new Inclusions({
      request,
      lookup: this.lookup,
      table: this.table,
      notebook: this.notebook,
      tokens: this.tokens,
      depth: () => this.open.length,
      lex: ({ file, text }) => request.cache.lexer.lex(file, text, request.language),
      readFile: (lexed) => this.readFile(lexed),
    });
  }

  read(): Preprocessed {
    const { mains, prelude, cache, language } = this.request;
    for (const main of mains) this.notebook.file(main);
    const start: Span = { file: mains[0] ?? "", start: 0, end: 0 };
    for (const name of prelude) {
      const found = this.lookup.find(name, false, "", undefined);
      if (found === undefined) this.notebook.missingInclude(start, name);
      else this.inclusions.include(found, start);
    }
    for (const main of mains) {
      const text = this.lookup.read(main);
      if (text !== undefined) this.readFile(cache.lexer.lex(main, text, language));
      else this.notebook.problem({ file: main, start: 0, end: 0 }, `${main} cannot be read.`);
    }
    const { files, definitions, uses, missing, problems } = this.notebook;
    return { tokens: this.tokens, files, macros: this.table.entries(), definitions, uses, missing, problems };
  }

  private makeExpander(): Expander {
    const place = {
      lineOf: (file: string, offset: number) => this.lines.lineOf(file, offset),
      nameOf: (file: string) => this.lines.nameOf(file),
      mainFile: this.request.mains[0] ?? "",
      includeLevel: () => this.open.length - 1,
      nextCounter: () => {
        this.inclusions.mustRepeat();
        this.counter += 1;
        return this.counter - 1;
      },
    };
    return new Expander(this.request.language, this.table, {
      builtIn: (macro, name) => builtInValue(macro, name, place),
      use: (use) => {
        if (isWorkspaceFile(use.call.file)) this.notebook.uses.push(use);
      },
      problem: (kind, span, message) => {
        this.inclusions.mustRepeat();
        if (kind === undefined) this.say(span, message);
        else this.notebook.problemOnce(kind, this.inclusions.placeFor(span), message);
      },
    });
  }

  private readFile(lexed: LexedFile): void {
    this.notebook.file(lexed.file);
    const cursor = new FileCursor(lexed, this.request.cache.definitionsOf(lexed), this);
    this.open.push(cursor);
    this.expander.readingFrom(cursor, () => this.expander.expandInto(this.tokens));
    this.open.pop();
  }

  // --- What the cursor asks for ------------------------------------------------------------------------

  problems(piece: Piece): void {
    const name = piece.kind === "directive" ? piece.name?.text : undefined;
    if (name === "error" || name === "warning" || name === "pragma") return;
    for (const problem of piece.problems) this.say(problem.span, problem.message);
  }

  misplaced(piece: DirectivePiece, message: string): void {
    this.say(spanOf(piece), message);
  }

  condition(cursor: FileCursor, piece: DirectivePiece, name: string): boolean {
    const { request, expander, table, lookup } = this;
    const { file } = cursor.lexed;
    const result = conditionOf(piece, name, {
      expander,
      table,
      isCpp: request.language === "c++",
      hasInclude: (header, isNext) =>
        lookup.find(header.name, header.isQuoted, file, isNext ? file : undefined) !== undefined,
    });
    if (result.problem !== undefined) this.say(result.problem.span, result.problem.message);
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
        else this.say(spanOf(piece), "#undef needs a name.");
        return;
      }
      case "include":
      case "include_next":
      case "import":
        this.include(cursor, piece, name, mode);
        return;
      case "error":
      case "warning":
        this.say(spanOf(piece), `#${name} ${textOf(cursor, piece)}`.trim());
        return;
      case "line":
        this.line(cursor, piece);
        return;
      case "pragma":
        if (piece.tokens[0]?.text === "once") this.inclusions.readOnce(cursor.lexed.file);
        return;
      case "ident":
      case "sccs":
      case "assert":
      case "unassert":
        return;
      default:
        this.say(spanOf(piece), `#${name} is no directive.`);
    }
  }

  // --- Directives --------------------------------------------------------------------------------------

  private define(cursor: FileCursor, piece: DirectivePiece): void {
    const { definitions } = cursor;
    const result = definitions.get(piece) ?? readDefine(piece, false);
    definitions.set(piece, result);
    const { macro, problem } = result;
    if (problem !== undefined) this.say(problem.token, problem.message);
    if (macro === undefined) return;
    this.table.set(macro.name, macro);
    if (isWorkspaceFile(cursor.lexed.file)) this.notebook.definitions.push(macro);
  }

  private include(cursor: FileCursor, piece: DirectivePiece, name: string, mode: ReadMode): void {
    const span = spanOf(piece);
    const header = readHeaderName(piece.tokens, (tokens) => this.expandList(tokens));
    if (header === undefined) {
      this.say(span, `#${name} needs a file name in quotes or angle brackets.`);
      return;
    }
    if (mode === "collect") {
      this.say(span, "An #include inside the arguments of a macro is not read.");
      return;
    }
    const { file } = cursor.lexed;
    const skip = name === "include_next" ? file : undefined;
    const found = this.lookup.find(header.name, header.isQuoted, file, skip);
    if (found === undefined) {
      this.inclusions.mustRepeat();
      this.notebook.missingInclude(this.inclusions.placeFor(span), header.name);
      return;
    }
    this.inclusions.include(found, span);
    if (name === "import") this.inclusions.readOnce(found.file);
  }

  /** `#line 12 "name"` (C11 6.10.4). */
  private line(cursor: FileCursor, piece: DirectivePiece): void {
    const [number, name] = this.expandList(piece.tokens);
    const digits = number?.text ?? "";
    if (!/^[0-9]+$/.test(digits)) {
      this.say(spanOf(piece), "#line needs a line number.");
      return;
    }
    const here = this.lines.physicalLine(cursor.lexed.file, piece.hash.start);
    cursor.lineShift = Number.parseInt(digits, 10) - 1 - here;
    if (name?.kind === "string") cursor.presumedName = name.text.slice(1, -1);
  }

  private expandList(tokens: readonly WorkToken[]): readonly WorkToken[] {
    return this.expander.readingList(tokens, () => this.expander.rest());
  }

  private say(span: Span, message: string): void {
    this.inclusions.mustRepeat();
    this.notebook.problem(this.inclusions.placeFor(span), message);
  }
}

function spanOf(piece: DirectivePiece): Span {
  const last = piece.tokens.at(-1) ?? piece.name ?? piece.hash;
  return { file: piece.hash.file, start: piece.hash.start, end: last.end };
}

/** What is written behind a directive's name. */
function textOf(cursor: FileCursor, piece: DirectivePiece): string {
  const first = piece.tokens[0];
  return first === undefined ? "" : cursor.lexed.text.slice(first.start, piece.end).trim();
}
