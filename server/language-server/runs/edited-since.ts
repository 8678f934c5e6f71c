import type { Texts } from "../trials/texts.ts";

/** Files that have another text than before, that came or that are gone. */
export function editedSince(before: Texts, now: Texts): readonly string[] {
  const files = new Set([...before.keys(), ...now.keys()]);
  return [...files].filter((file) => before.get(file) !== now.get(file));
}

/** What a line has become. */
export interface LineSince {
  /** From 1; where it stood where it is not there any more as it was. */
  readonly line: number;
  readonly isAsItWas: boolean;
}

/** Where a line of a text stands in a later one. */
export function lineSince(before: string, now: string, line: number): LineSince {
  const [old, present] = [linesOf(before), linesOf(now)];
  const head = alike(old, present);
  const shorter = Math.min(old.length, present.length);
  const tail = Math.min(shorter - head, alike(old.toReversed(), present.toReversed()));
  if (line <= head) return { line, isAsItWas: true };
  if (line > old.length - tail) return { line: line + present.length - old.length, isAsItWas: true };
  // Between the first edit and the last, a line is known again where no other is like it.
  const text = old[line - 1];
  const places = (lines: readonly string[]): readonly number[] =>
    lines.flatMap((each, index) =>
      each === text && index >= head && index < lines.length - tail ? index : [],
    );
  const [found, ...others] = places(present);
  if (found !== undefined && others.length === 0 && places(old).length === 1)
    return { line: found + 1, isAsItWas: true };
  return { line: Math.max(1, Math.min(line, present.length - tail)), isAsItWas: false };
}

function linesOf(text: string): readonly string[] {
  return text.split(/\r\n?|\n/);
}

/** How many lines at the beginning are the same. */
function alike(one: readonly string[], other: readonly string[]): number {
  const first = one.findIndex((line, index) => line !== other[index]);
  return first < 0 ? one.length : first;
}
