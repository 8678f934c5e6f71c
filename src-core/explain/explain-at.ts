import type { Facts } from "../facts/facts.ts";
import { explainBitTime } from "./bit-banged.ts";
import { explainConstant } from "./constant.ts";
import { explainDelay } from "./delay-call.ts";
import type { Explanation } from "./explanation.ts";
import { explainLineFormat } from "./line-format.ts";
import { explainLineRate } from "./line-rate.ts";
import { explainNotedConstant } from "./noted-constant.ts";
import type { Place } from "./place.ts";
import { explainRegister } from "./register.ts";
import { explainRequestHold } from "./request-hold.ts";
import { explainResetWait } from "./reset-wait.ts";
import { explainSentByte } from "./sent-byte.ts";
import { usesOf } from "./uses.ts";

/** From what is said and what the place does, down to what its characters are. */
const byMeaning: readonly ((place: Place) => Explanation | undefined)[] = [
  explainRequestHold,
  explainSentByte,
  explainResetWait,
  explainLineRate,
  explainLineFormat,
  explainBitTime,
  explainNotedConstant,
];

const byForm: readonly ((place: Place) => Explanation | undefined)[] = [
  explainDelay,
  explainRegister,
  explainConstant,
];

/**
 * What the characters at an offset mean for the adapter; undefined where there is nothing to say. The name of a
 * constant in its declaration is explained by what it is used for. Notes are explained elsewhere. Never throws.
 */
export function explainAt(facts: Facts, file: string, offset: number): Explanation | undefined {
  for (const unit of facts.program.units) {
    if (!unit.preprocessed.files.includes(file)) continue;
    const place: Place = { facts, unit, file, offset };
    const found = firstOf(byMeaning, place) ?? throughUses(place) ?? firstOf(byForm, place);
    if (found !== undefined) return found;
  }
  return undefined;
}

function firstOf(
  explainers: readonly ((place: Place) => Explanation | undefined)[],
  place: Place,
): Explanation | undefined {
  for (const explain of explainers) {
    const found = explain(place);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A declared name: what its first use that means something says, or else what it is. */
function throughUses(place: Place): Explanation | undefined {
  const declared = usesOf(place);
  if (declared === undefined) return undefined;
  for (const explainers of [byMeaning, byForm]) {
    for (const use of declared.uses) {
      const found = firstOf(explainers, { ...place, file: use.file, offset: use.start });
      if (found !== undefined) return { markdown: found.markdown, span: declared.name };
    }
  }
  return undefined;
}
