import { isStandIn, type Token, visibleSpan } from "../tokens.ts";

/** The tokens of one top-level declaration, up to its `;` or the end of its body. Namespaces stay whole. */
export interface Chunk {
  readonly tokens: readonly Token[];
}

/** How many chunks of built-in headers are kept before all are given up. */
const BUILT_IN_CHUNKS = 20_000;

/**
 * Hands out the chunk of last time where all its tokens are still the same objects. Those of a unit are kept
 * until it is split again; those of built-in headers are shared by all units.
 */
export class ChunkCache {
  private readonly units = new Map<string, ReadonlyMap<Token, Chunk>>();
  private readonly builtIn = new Map<Token, Chunk>();

  /** Takes chunks of one unit, named by `key`; they replace those of its last splitting when it is closed. */
  split<T>(key: string, body: (chunkOf: ChunkMaker) => T): T {
    const last = this.units.get(key);
    const now = new Map<Token, Chunk>();
    const result = body((tokens, start, end) => {
      const first = tokens[start];
      if (first === undefined) return { tokens: [] };
      // The author's own may begin with a macro of a built-in header, as `bool` is one in C.
      const isBuiltIn = isStandIn(visibleSpan(first).file);
      const kept = isBuiltIn ? this.builtIn.get(first) : last?.get(first);
      const isSame = kept !== undefined && hasTokens(kept, tokens, start, end);
      const chunk = isSame ? kept : { tokens: tokens.slice(start, end) };
      if (!isBuiltIn) now.set(first, chunk);
      else if (!isSame) this.keepBuiltIn(first, chunk);
      return chunk;
    });
    this.units.set(key, now);
    return result;
  }

  private keepBuiltIn(first: Token, chunk: Chunk): void {
    if (this.builtIn.size >= BUILT_IN_CHUNKS) this.builtIn.clear();
    this.builtIn.set(first, chunk);
  }
}

/** The chunk of the tokens from `start` to `end`, exclusive. */
export type ChunkMaker = (tokens: readonly Token[], start: number, end: number) => Chunk;

function hasTokens(kept: Chunk, tokens: readonly Token[], start: number, end: number): boolean {
  const { length } = kept.tokens;
  if (length !== end - start) return false;
  for (let index = 0; index < length; index += 1) {
    if (kept.tokens[index] !== tokens[start + index]) return false;
  }
  return true;
}
