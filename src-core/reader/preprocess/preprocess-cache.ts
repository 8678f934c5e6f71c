import type { DirectivePiece, LexedFile } from "../lexer/lexed-file.ts";
import { LexerCache } from "../lexer/lexer-cache.ts";
import type { DefineResult } from "./define.ts";
import type { KeptInclusion } from "./kept-inclusions.ts";
import type { Macro } from "./macro.ts";

/** What is kept between calls of `preprocess`: lexed files, macros, inclusions of built-in headers. */
export class PreprocessCache {
  readonly lexer = new LexerCache();
  /** What the `#define`s of a file mean, as long as its text stays the same. */
  private readonly definitions = new WeakMap<LexedFile, Map<DirectivePiece, DefineResult>>();
  readonly initial = new Map<string, ReadonlyMap<string, Macro>>();
  readonly inclusions = new Map<string, readonly KeptInclusion[]>();

  definitionsOf(lexed: LexedFile): Map<DirectivePiece, DefineResult> {
    const kept = this.definitions.get(lexed) ?? new Map<DirectivePiece, DefineResult>();
    this.definitions.set(lexed, kept);
    return kept;
  }
}
