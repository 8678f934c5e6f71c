import type { Language } from "../lexer/scanner.ts";
import type { SourceHost } from "../source-host.ts";
import type { Preprocessed } from "../tokens.ts";
import type { PreprocessCache } from "./preprocess-cache.ts";
import { UnitReader } from "./unit-reader.ts";

export interface PreprocessRequest {
  readonly host: SourceHost;
  /** The files read one behind the other: one C or C++ file, or all `.ino` files of a sketch in order. */
  readonly mains: readonly string[];
  /** Headers included before the first line, by name: the sketch core header of a sketch. */
  readonly prelude: readonly string[];
  readonly language: Language;
  /** Macros from outside, the compiler's own among them: name, or name with parameters, to body. */
  readonly defines: Readonly<Record<string, string>>;
  /** Folders of the workspace where includes are looked for, in order. */
  readonly includePaths: readonly string[];
  /** Text of a built-in header by its name as in `#include <name>`. */
  readonly standIns: (name: string) => string | undefined;
  /** Kept by the caller between calls; makes reading unchanged files fast. */
  readonly cache: PreprocessCache;
}

/**
 * Preprocesses one translation unit (C11 5.1.1.2, phases 1 to 4, with what GNU compilers add). Never throws:
 * what is not understood is in `problems`, files not found are in `missing`.
 */
export function preprocess(request: PreprocessRequest): Preprocessed {
  return new UnitReader(request).read();
}
