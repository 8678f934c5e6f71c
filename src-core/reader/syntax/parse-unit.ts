import type { Grammar } from "./grammar/grammar.ts";
import { createUnitNames } from "./names/names.ts";
import type { ChunkSyntax } from "./nodes.ts";
import { type ChunkTokens, parseChunk } from "./parse-chunk.ts";
import type { SyntaxCache } from "./syntax-cache.ts";

export interface ParsedChunk extends ChunkTokens {
  readonly syntax: ChunkSyntax;
}

/** The trees of a unit's chunks, read in order, because each decides what names mean in those behind it. */
export function parseUnit(
  chunks: readonly ChunkTokens[],
  language: "c" | "c++",
  grammar: Grammar,
  cache: SyntaxCache,
): readonly ParsedChunk[] {
  const names = createUnitNames(language);
  return chunks.map((chunk) => ({
    tokens: chunk.tokens,
    syntax: parseChunk(chunk, names, grammar, cache),
  }));
}
