import type { Grammar } from "./grammar/grammar.ts";
import type { RawTree } from "./grammar/raw-nodes.ts";
import type { Item, Presentation } from "./outline/presentation.ts";

/** After so many attempts what is still wrong is left to the grammar's own recovery. */
const attempts = 12;
/** So many attempts blank one item each: one error often makes the grammar see others behind it. */
const carefulAttempts = 8;
/** Tokens parsed again in all attempts together: nonsense may be long. */
const tokensParsed = 100_000;
/** Errors looked at in one attempt. */
const errorsPerAttempt = 2_000;

/**
 * Parses, and where the grammar meets an error blanks the smallest statement or declaration around it and
 * parses again, so that what stands beside it is read as if the error were not there.
 */
export function recovered(presentation: Presentation, grammar: Grammar): RawTree | undefined {
  const affordable = Math.max(3, Math.floor(tokensParsed / presentation.tokens.length));
  const allowed = Math.min(attempts, affordable);
  const careful = Math.min(carefulAttempts, allowed - 3);
  let tree = parse(presentation, grammar);
  for (let attempt = 0; attempt < allowed && tree !== undefined && tree.errors.length > 0; attempt += 1) {
    const items = attempt === 0 ? aroundBrackets(presentation) : new Set<Item>();
    for (const error of bySize(tree)) {
      if (items.size > 0 && attempt < careful) break;
      const item = smallestAround(presentation, error);
      if (item !== undefined) items.add(item);
    }
    if (items.size === 0) return tree;
    for (const item of items) presentation.blank(item);
    tree = parse(presentation, grammar);
  }
  return tree;
}

function parse(presentation: Presentation, grammar: Grammar): RawTree | undefined {
  const { text, offsets } = presentation.text();
  return grammar.parse(text, offsets);
}

/** Where a bracket has no partner, the error is known better than the grammar can tell. */
function aroundBrackets(presentation: Presentation): Set<Item> {
  const items = new Set<Item>();
  for (const index of presentation.unmatched.slice(0, errorsPerAttempt)) {
    const item = smallestAround(presentation, { first: index, end: index + 1 });
    if (item !== undefined) items.add(item);
  }
  return items;
}

/** The errors from small to large: a large one only says that something in it is wrong. */
function bySize(tree: RawTree): readonly Item[] {
  const size = (error: Item): number => error.end - error.first;
  return tree.errors.slice(0, errorsPerAttempt).sort((a, b) => size(a) - size(b));
}

/** The smallest item that holds the error, or else the one it starts in; none that is blanked already. */
function smallestAround(presentation: Presentation, error: Item): Item | undefined {
  const { first, end } = error;
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
