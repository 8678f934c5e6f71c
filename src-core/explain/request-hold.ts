import type { HoldPart, RequestHold } from "../facts/ps2/ps2-facts.ts";
import { timeText } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
import { requirement, sourceOf } from "./bounds.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A delay during which the clock is held low before a byte goes to the mouse. */
export function explainRequestHold({ facts, file, offset }: Place): Explanation | undefined {
  const known = quantity("ps2.request-hold");
  for (const hold of facts.ps2.holds) {
    const part = hold.parts.find(({ span }) => holds(span, file, offset));
    if (part === undefined || known === undefined) continue;
    return explanation(part.span, `Request to send: the clock is low for ${lengthOf(hold)}`, [
      partOf(part, hold),
      known.meaning,
      requirement(known, hold.unknown === undefined ? hold.us : undefined),
      sourceOf(known),
    ]);
  }
  return undefined;
}

function lengthOf({ us, unknown }: RequestHold): string {
  return unknown === undefined ? timeText(us) : `${timeText(us)} and a time that is not known`;
}

function partOf({ us, times }: HoldPart, hold: RequestHold): string | undefined {
  if (us === undefined || hold.parts.length < 2) return undefined;
  return `This delay is ${times > 1 ? `${times} times ` : ""}${timeText(us)} of it.`;
}
