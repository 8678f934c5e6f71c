import type { Token } from "../tokens.ts";

/** The tokens of one top-level declaration, up to its `;` or the end of its body. Namespaces stay whole. */
export interface Chunk {
  readonly tokens: readonly Token[];
}

/** Hands out the chunk of last time where all its tokens are still the same objects. */
export class ChunkCache {
  private readonly chunks = new WeakMap<Token, Chunk>();

  chunkOf(tokens: readonly Token[], start: number, end: number): Chunk {
    const first = tokens[start];
    if (first === undefined) return { tokens: [] };
    const kept = this.chunks.get(first);
    if (kept !== undefined && isSame(kept.tokens, tokens, start, end)) return kept;
    const chunk = { tokens: tokens.slice(start, end) };
    this.chunks.set(first, chunk);
    return chunk;
  }
}

function isSame(kept: readonly Token[], tokens: readonly Token[], start: number, end: number): boolean {
  if (kept.length !== end - start) return false;
  for (let index = 0; index < kept.length; index += 1) {
    if (kept[index] !== tokens[start + index]) return false;
  }
  return true;
}
