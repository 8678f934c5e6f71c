import type { Token } from "../tokens.ts";
import type { NameJournal, UnitNames } from "./names/names.ts";
import { stillHolds } from "./names/names.ts";
import type { ChunkSyntax } from "./nodes.ts";
import type { ChunkTokens } from "./parse-chunk.ts";

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
  private readonly texts = {
    c: new WeakMap<ChunkTokens, string>(),
    "c++": new WeakMap<ChunkTokens, string>(),
  };

  /** `limit` is a number of different chunks. */
  constructor(limit = 20_000) {
    this.limit = limit;
  }

  /** The canonical text of a chunk, which stays one string as long as the chunk stays one object. */
  textOf(chunk: ChunkTokens, language: UnitNames["language"]): string {
    const texts = this.texts[language];
    const known = texts.get(chunk);
    if (known !== undefined) return known;
    const text = `${language} ${canonicalText(chunk.tokens)}`;
    texts.set(chunk, text);
    return text;
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

/** What a tree depends on beside the meaning of names. */
function canonicalText(tokens: readonly Token[]): string {
  return tokens.map(({ text }) => text).join(" ");
}
