import type { Fix } from "../../finding.ts";
import type { BitPlace } from "../judge/fault-draft.ts";
import { type Literal, writtenLike } from "./literals.ts";
import { replaced } from "./source-text.ts";

/** Changes of one number to one that may have been meant, the likeliest first. */
export function* otherNumbers(
  literal: Literal,
  place: BitPlace | undefined,
  constants: { readonly mask: number; readonly levels: number },
): Generator<Fix> {
  const { value, text, span } = literal;
  const tried = new Set([value]);
  for (const other of meant(literal, place, constants)) {
    if (tried.has(other) || other < 0 || other > 0xff) continue;
    tried.add(other);
    const written = writtenLike(text, other);
    yield { title: `Write ${written} instead of ${text}`, edits: [replaced(span, written)] };
  }
}

function meant(
  { value, role }: Literal,
  place: BitPlace | undefined,
  { mask, levels }: { readonly mask: number; readonly levels: number },
): readonly number[] {
  const bit = place === undefined ? 0 : 2 ** place.bit;
  switch (role) {
    case "shift":
      return [1, -1, 2, -2, 3, -3, 4, -4]
        .map((step) => value + step)
        .filter((count) => count >= 0 && count < 8);
    case "mask":
      return [
        value & ~bit,
        value & ~mask & 0xff,
        value | bit,
        value | 0x80,
        value | 0xc0,
        value | (value << 1),
        value | (value >> 1),
        value & (value >> 1),
        value & (value << 1),
        ...shifted(value),
        0xff,
      ].filter((other) => other > 0);
    case "factor":
      return [value * 2, value / 2, value * 4, value / 4].filter(
        (other) => Number.isInteger(other) && other > 1,
      );
    case "bits":
      return [(value & ~mask) | levels, value & ~bit, ...shifted(value), value | bit];
  }
}

/** Left and right by a few places, where no bit gets lost. */
function shifted(value: number): readonly number[] {
  return [1, 2, 3, 4].flatMap((by) => [value * 2 ** by, ...(value % 2 ** by === 0 ? [value / 2 ** by] : [])]);
}
