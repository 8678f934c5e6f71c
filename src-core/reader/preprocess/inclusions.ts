import type { Span } from "../../finding.ts";
import type { LexedFile, WorkToken } from "../lexer/lexed-file.ts";
import { INCLUDE_DEPTH, INCLUSIONS, UNIT_TOKENS } from "./budget.ts";
import type { FoundFile, IncludeLookup } from "./include-lookup.ts";
import { addKept, findKept, newLookupRecord } from "./kept-inclusions.ts";
import type { MacroTable } from "./macro-table.ts";
import { isWorkspaceFile, type Notebook } from "./notebook.ts";
import type { PreprocessRequest } from "./preprocess.ts";

/** What inclusions ask of the unit. */
export interface InclusionSurroundings {
  readonly request: PreprocessRequest;
  readonly lookup: IncludeLookup;
  readonly table: MacroTable;
  readonly notebook: Notebook;
  /** The unit's tokens, to which a file's tokens are added. */
  readonly tokens: WorkToken[];
  /** How many files are open. */
  depth(): number;
  lex(found: FoundFile): LexedFile;
  readFile(lexed: LexedFile): void;
}

/** Decides for each include whether its file is read, and repeats what is known already. */
export class Inclusions {
  private readonly unit: InclusionSurroundings;
  private readonly once = new Set<string>();
  private count = 0;
  /** The include in a workspace file that led into the built-in headers being read. */
  private from: Span | undefined;

  constructor(unit: InclusionSurroundings) {
    this.unit = unit;
  }

  include(found: FoundFile, span: Span): void {
    if (this.isReadOnce(found.file)) return;
    const lexed = this.unit.lex(found);
    if (lexed.guard !== undefined && this.unit.table.get(lexed.guard) !== undefined) return;
    if (this.isTooMuch(found, span)) return;
    if (isWorkspaceFile(found.file) || this.from !== undefined) {
      this.unit.readFile(lexed);
      return;
    }
    this.from = span;
    this.includeBuiltIn(found, lexed);
    this.from = undefined;
  }

  /** `#pragma once` in a file, or `#import` of it. */
  readOnce(file: string): void {
    this.once.add(file);
    this.unit.lookup.record?.nowRead.add(file);
  }

  /** A place in the workspace: for one inside a built-in header, the include that led there. */
  placeFor(span: Span): Span {
    return isWorkspaceFile(span.file) ? span : (this.from ?? span);
  }

  /** What is being read cannot be kept: it said something, or depends on more than is taken down. */
  mustRepeat(): void {
    const { record } = this.unit.lookup;
    if (record !== undefined) record.mustRepeat = true;
  }

  private isTooMuch({ file }: FoundFile, span: Span): boolean {
    this.count += 1;
    const { notebook, tokens } = this.unit;
    if (this.unit.depth() >= INCLUDE_DEPTH) {
      const message = `Includes nest deeper than ${INCLUDE_DEPTH} files at ${file}; does a file include itself?`;
      notebook.problemOnce("include depth", this.placeFor(span), message);
    } else if (this.count > INCLUSIONS || tokens.length > UNIT_TOKENS) {
      const message = `The unit grows without end at ${file}; files included from here on are left out.`;
      notebook.problemOnce("unit size", this.placeFor(span), message);
    } else return false;
    this.mustRepeat();
    return true;
  }

  /** Reads a built-in header, or repeats an inclusion of it that came out as this one would. */
  private includeBuiltIn(found: FoundFile, lexed: LexedFile): void {
    const { lookup, table, tokens, request } = this.unit;
    const { inclusions } = request.cache;
    const key = `${request.language} ${found.file}`;
    const kept = findKept(inclusions.get(key), found, {
      table,
      once: this.once,
      readText: (path) => lookup.read(path),
      standIn: (name) => lookup.standIn(name),
    });
    if (kept !== undefined) {
      table.repeat(kept.table);
      for (const file of kept.lookups.nowRead) this.once.add(file);
      for (const token of kept.tokens) tokens.push(token);
      return;
    }
    const record = newLookupRecord();
    const tableRecord = table.startRecord();
    const start = tokens.length;
    lookup.record = record;
    this.unit.readFile(lexed);
    lookup.record = undefined;
    table.endRecord(tableRecord);
    if (record.mustRepeat) return;
    const made = { text: found.text, table: tableRecord, tokens: tokens.slice(start), lookups: record };
    inclusions.set(key, addKept(inclusions.get(key), made));
  }

  private isReadOnce(file: string): boolean {
    const isRead = this.once.has(file);
    const { record } = this.unit.lookup;
    if (record !== undefined && !record.nowRead.has(file) && !record.wasRead.has(file)) {
      record.wasRead.set(file, isRead);
    }
    return isRead;
  }
}
