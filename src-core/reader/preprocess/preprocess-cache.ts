import type { DirectivePiece, WorkToken } from "../lexer/lexed-file.ts";
import { LexerCache } from "../lexer/lexer-cache.ts";
import type { DefineResult } from "./define.ts";
import type { Macro } from "./macro.ts";
import type { TableRecord } from "./macro-table.ts";

/** One inclusion of a built-in header, kept to be repeated. */
export interface KeptInclusion {
  readonly text: string;
  readonly table: TableRecord;
  readonly tokens: readonly WorkToken[];
  /** Files read with `#pragma once` before and in it. */
  readonly once: readonly string[];
  /** Paths of the workspace where headers were looked for and not found. */
  readonly absent: readonly string[];
  /** Headers it included, with their texts. */
  readonly headers: ReadonlyMap<string, string>;
}

/** What is kept between calls of `preprocess`: lexed files, macros, inclusions of built-in headers. */
export class PreprocessCache {
  readonly lexer = new LexerCache();
  readonly definitions = new WeakMap<DirectivePiece, DefineResult>();
  readonly initial = new Map<string, ReadonlyMap<string, Macro>>();
  readonly inclusions = new Map<string, KeptInclusion[]>();
}
