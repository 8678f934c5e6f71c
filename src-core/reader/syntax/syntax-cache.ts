import type { NameJournal, UnitNames } from "./names/names.ts";
import { stillHolds } from "./names/names.ts";
import type { ChunkSyntax } from "./nodes.ts";

/** A chunk's tree, and what it asked of the names before it. */
export interface CachedSyntax {
  readonly syntax: ChunkSyntax;
  readonly journal: NameJournal;
}

/** How many readings of one text are kept: more than one where units give its names different meanings. */
const variantsKept = 4;

/** Trees by the text of their chunk, the least recently used ones forgotten. */
export class SyntaxCache {
  private readonly limit: number;
  private readonly entries = new Map<string, CachedSyntax[]>();

  /** `limit` is a number of different chunks. */
  constructor(limit = 20_000) {
    this.limit = limit;
  }

  find(text: string, names: UnitNames): CachedSyntax | undefined {
    const variants = this.entries.get(text);
    if (variants === undefined) return undefined;
    const found = variants.find((variant) => stillHolds(variant.journal, names));
    if (found !== undefined && this.entries.size * 2 > this.limit) {
      // Counts as used last.
      this.entries.delete(text);
      this.entries.set(text, variants);
    }
    return found;
  }

  keep(text: string, cached: CachedSyntax): void {
    const variants = this.entries.get(text) ?? [];
    variants.unshift(cached);
    if (variants.length > variantsKept) variants.length = variantsKept;
    this.entries.set(text, variants);
    if (this.entries.size <= this.limit) return;
    const oldest = this.entries.keys().next();
    if (oldest.done !== true) this.entries.delete(oldest.value);
  }
}
