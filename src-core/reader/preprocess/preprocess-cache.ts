import type { DirectivePiece } from "../lexer/lexed-file.ts";
import { LexerCache } from "../lexer/lexer-cache.ts";
import type { DefineResult } from "./define.ts";
import type { KeptInclusion } from "./kept-inclusions.ts";
import type { Macro } from "./macro.ts";

/** What is kept between calls of `preprocess`: lexed files, macros, inclusions of built-in headers. */
export class PreprocessCache {
  readonly lexer = new LexerCache();
  readonly definitions = new WeakMap<DirectivePiece, DefineResult>();
  readonly initial = new Map<string, ReadonlyMap<string, Macro>>();
  readonly inclusions = new Map<string, readonly KeptInclusion[]>();
}
