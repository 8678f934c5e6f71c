import type { Facts } from "../facts/facts.ts";
import type { TriedReport } from "../trial-details.ts";
import { innermost } from "./around.ts";
import { explainBitTime } from "./bit-banged.ts";
import { explainClock } from "./clock.ts";
import { explainConstant } from "./constant.ts";
import { delayArgument, explainDelay } from "./delay-call.ts";
import type { Explanation } from "./explanation.ts";
import { explainHandler } from "./handler.ts";
import { explainLineFormat } from "./line-format.ts";
import { explainLineRate } from "./line-rate.ts";
import { namedConstantAt } from "./named-constant.ts";
import { explainNamedConstant } from "./named-value.ts";
import { explainNotedConstant } from "./noted-constant.ts";
import { explainPin } from "./pin.ts";
import type { Place } from "./place.ts";
import { explainRegister } from "./register.ts";
import { explainReply } from "./reply.ts";
import { explainReportBits } from "./report/report-bits.ts";
import { explainReportLayout } from "./report/report-layout.ts";
import { explainRequestHold } from "./request-hold.ts";
import { explainResetWait } from "./reset-wait.ts";
import { explainSentByte } from "./sent-byte.ts";

type Explainer = (place: Place) => Explanation | undefined;

/** What a constant is wherever it stands: a pin stays a pin. */
const lasting: readonly Explainer[] = [explainReply, explainPin];

/** What the firmware does at a place. */
const deeds: readonly Explainer[] = [
  explainClock,
  explainHandler,
  explainRequestHold,
  explainSentByte,
  explainResetWait,
  explainLineRate,
  explainLineFormat,
  explainBitTime,
  explainNotedConstant,
  explainReportLayout,
  explainReportBits,
  ...lasting,
];

/** From what a place does, through what the constant there does elsewhere, down to what its characters are. */
const steps: readonly Explainer[] = [
  firstOf(deeds),
  throughUses,
  throughDelay,
  explainDelay,
  explainRegister,
  explainConstant,
  explainNamedConstant,
];

/**
 * What the characters at an offset mean for the adapter; undefined where there is nothing to say. The name of a
 * constant in its declaration is explained by what it is used for. Notes are explained elsewhere. `tried` is what running encoders
 * and decoders showed, where that is known. Never throws.
 */
export function explainAt(
  facts: Facts,
  file: string,
  offset: number,
  tried?: readonly TriedReport[],
): Explanation | undefined {
  const places = facts.program.units
    .filter(({ preprocessed }) => preprocessed.files.includes(file))
    .map((unit): Place => ({ facts, unit, file, offset, tried }));
  for (const step of steps) {
    for (const place of places) {
      const found = step(place);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

function firstOf(explainers: readonly Explainer[]): Explainer {
  return (place) => {
    for (const explain of explainers) {
      const found = explain(place);
      if (found !== undefined) return found;
    }
    return undefined;
  };
}

/** The name of a delay function: what its argument is for. */
function throughDelay(place: Place): Explanation | undefined {
  const argument = delayArgument(place);
  const found = argument && firstOf(deeds)({ ...place, ...argument });
  return found && { markdown: found.markdown, span: innermost(place)?.span ?? found.span };
}

/** Uses of one constant that are looked at: the first ones say enough. */
const enough = 12;

/** A constant's name: what its first use that means something says. */
function throughUses(place: Place): Explanation | undefined {
  const constant = namedConstantAt(place);
  if (constant === undefined) return undefined;
  const explain = firstOf(constant.part === "use" ? lasting : deeds);
  const { declared, uses } = constant;
  for (const { file, start } of [declared, ...uses.slice(0, enough)]) {
    const found = explain({ ...place, file, offset: start });
    if (found !== undefined) return { markdown: found.markdown, span: constant.span };
  }
  return undefined;
}
