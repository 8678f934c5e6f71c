import { nearestNames } from "../near-names.ts";

/** A sentence's end that offers near names, and the one a fix would write. */
export interface Suggestion {
  /** `; did you mean `a` or `b`?`, a list of what there is, or empty. */
  readonly phrase: string;
  readonly best: string | undefined;
}

const SHORT_LIST = 16;

/** Near names first; where none is near, all of them if they are few. */
export function suggestionFor(name: string, candidates: readonly string[]): Suggestion {
  const near = distinct(nearestNames(name, candidates, 4)).slice(0, 3);
  const [best] = near;
  if (best !== undefined) return { phrase: `; did you mean ${listed(near, "or")}?`, best };
  if (candidates.length === 0 || candidates.length > SHORT_LIST) return { phrase: "", best: undefined };
  return { phrase: `; known: ${listed(candidates, "and")}`, best: undefined };
}

/** One of each name that comes in several cases. */
function distinct(names: readonly string[]): readonly string[] {
  const lower = names.map((name) => name.toLowerCase());
  return names.filter((_, index) => lower.indexOf(lower[index] ?? "") === index);
}

/** "`a`, `b` or `c`". */
export function listed(names: readonly string[], joining: "and" | "or"): string {
  const quoted = names.map((name) => `\`${name}\``);
  const last = quoted.at(-1) ?? "";
  if (quoted.length < 2) return last;
  return `${quoted.slice(0, -1).join(", ")} ${joining} ${last}`;
}
