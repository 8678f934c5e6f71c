import { plain } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
import { requirement, sourceOf } from "./bounds.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** The delay or time-out that decides how long a mouse may take for its self-test. */
export function explainResetWait({ facts, file, offset }: Place): Explanation | undefined {
  const known = quantity("ps2.reset-wait");
  const wait = facts.ps2.resets.find(
    ({ decides }) => decides !== undefined && holds(decides.span, file, offset),
  );
  if (known === undefined || wait?.decides === undefined || wait.ms === undefined) return undefined;
  return explanation(wait.decides.span, `After a reset the mouse is waited for ${plain(wait.ms, 1)} ms`, [
    known.meaning,
    requirement(known, wait.ms),
    sourceOf(known),
  ]);
}
