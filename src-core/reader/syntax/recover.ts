import type { Grammar } from "./grammar/grammar.ts";
import type { RawTree } from "./grammar/raw-nodes.ts";
import type { Item, Presentation } from "./outline/presentation.ts";

/** After so many attempts what is still wrong is left to the grammar's own recovery. */
const attempts = 12;

/**
 * Parses, and where the grammar meets an error blanks the smallest statement or declaration around it and
 * parses again, so that what stands beside it is read as if the error were not there.
 */
export function recovered(presentation: Presentation, grammar: Grammar): RawTree | undefined {
  let tree: RawTree | undefined;
  for (let attempt = 0; attempt < attempts; attempt += 1) {
    const { text, offsets } = presentation.text();
    tree = grammar.parse(text, offsets);
    if (tree === undefined || tree.errors.length === 0) return tree;
    const items = new Set<Item>();
    for (const { first, end } of tree.errors) {
      const item = smallestAround(presentation, first, end);
      if (item !== undefined) items.add(item);
    }
    if (items.size === 0) return tree;
    for (const item of items) presentation.blank(item);
  }
  return tree;
}

/** The smallest item that holds the error, or else the one it starts in; none that is blanked already. */
function smallestAround(presentation: Presentation, first: number, end: number): Item | undefined {
  let best: Item | undefined;
  let bestStart: Item | undefined;
  for (const item of presentation.items) {
    if (presentation.blanked.get(item.end - 1) === item || item.first > first || item.end <= first) continue;
    const size = item.end - item.first;
    if (item.end >= end && (best === undefined || size < best.end - best.first)) best = item;
    if (bestStart === undefined || size < bestStart.end - bestStart.first) bestStart = item;
  }
  return best ?? bestStart;
}
