import type { SharedObject } from "../../facts/board/shared-variables.ts";
import type { Span } from "../../finding.ts";
import { visibleRange } from "../../reader/tokens.ts";

/**
 * Where variables that an interrupt may change half-way are read or written and no harm comes of it, on whichever way the code
 * came there: on some ways the interrupt may be off.
 */
export function undisturbedPlaces(shared: readonly SharedObject[]): readonly Span[] {
  const accesses = shared.flatMap(({ inMain }) => inMain);
  const disturbed = new Set(accesses.filter(({ undisturbed }) => !undisturbed).map(({ at }) => at));
  return accesses
    .filter(({ at }) => !disturbed.has(at))
    .map(({ at: { first, last } }) => visibleRange(first, last));
}
