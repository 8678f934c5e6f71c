import type { Token } from "../tokens.ts";
import { declarationsOf } from "./convert/declarations.ts";
import { Reading } from "./convert/reading.ts";
import type { Grammar } from "./grammar/grammar.ts";
import { apply, ChunkNames, type UnitNames } from "./names/names.ts";
import type { ChunkSyntax } from "./nodes.ts";
import { presentChunk } from "./outline/present.ts";
import type { Presentation } from "./outline/presentation.ts";
import { recovered } from "./recover.ts";
import type { SyntaxCache } from "./syntax-cache.ts";

/** One top-level declaration's tokens. */
export interface ChunkTokens {
  readonly tokens: readonly Token[];
}

/** A chunk of more tokens is passed over: a table of 60,000 numbers is larger than any target's memory. */
const mostTokens = 250_000;

/**
 * The tree of one chunk, from the cache where its text and the meaning of its names are as before. `names` is
 * what the chunks before it declared; what this one declares is added. Never throws.
 */
export function parseChunk(
  chunk: ChunkTokens,
  names: UnitNames,
  grammar: Grammar,
  cache: SyntaxCache,
): ChunkSyntax {
  const { tokens } = chunk;
  const text = cache.textOf(chunk, names.language);
  const known = cache.find(text, names);
  if (known !== undefined) {
    apply(known.journal, names);
    return known.syntax;
  }
  const chunkNames = new ChunkNames(names);
  const syntax = read(tokens, chunkNames, grammar);
  const journal = chunkNames.journal();
  cache.keep(text, { syntax, journal });
  apply(journal, names);
  return syntax;
}

function read(tokens: readonly Token[], names: ChunkNames, grammar: Grammar): ChunkSyntax {
  if (tokens.length === 0) return { declarations: [], notUnderstood: [] };
  if (tokens.length > mostTokens) return passedOver(tokens, "This declaration is too long to be read.");
  const presentation = presentChunk(tokens, names);
  if (presentation === undefined)
    return passedOver(tokens, "This declaration is nested too deeply to be read.");
  return convert(presentation, grammar) ?? passedOver(tokens, "This declaration is not understood.");
}

function convert(presentation: Presentation, grammar: Grammar): ChunkSyntax | undefined {
  const tree = recovered(presentation, grammar);
  if (tree === undefined) return undefined;
  const reading = new Reading(presentation);
  for (const { first, end, what } of presentation.notes) reading.note(first, end, what);
  const declarations = tree.root.type === "ERROR" ? undefined : declarationsOf(reading, tree.root.children);
  if (declarations === undefined) return undefined;
  const notUnderstood = reading.notUnderstood.sort((a, b) => a.first - b.first);
  return { declarations, notUnderstood };
}

function passedOver(tokens: readonly Token[], message: string): ChunkSyntax {
  const place = { first: 0, end: tokens.length };
  return {
    declarations: [{ ...place, kind: "not-understood", what: "declaration not understood" }],
    notUnderstood: [{ ...place, what: message }],
  };
}
