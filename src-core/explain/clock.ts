import { clockText } from "../figures.ts";
import type { Span } from "../finding.ts";
import type { Token } from "../reader/tokens.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** The name that every library takes the clock from. */
const NAME = "F_CPU";

/** The macro that tells the code how fast the chip runs: where it is defined and wherever it is used. */
export function explainClock(place: Place): Explanation | undefined {
  const { clock } = place.facts.board;
  const span = spanOf(place);
  if (clock === undefined || span === undefined) return undefined;
  return explanation(span, `${NAME}: the chip's clock, ${clockText(clock.hz)}`, [
    clock.by === "said"
      ? "Said in a note or in edgewise.json. Delays and baud divisors are computed from it."
      : "Delays and baud divisors are computed from it. The code cannot set the clock with it: it has to be what the board has.",
  ]);
}

function spanOf({ unit: { preprocessed }, file, offset }: Place): Span | undefined {
  const use = preprocessed.uses.find(({ name, call }) => name === NAME && holds(call, file, offset));
  if (use !== undefined) return use.call;
  for (const { name, definition, body } of preprocessed.definitions) {
    if (definition?.file !== file) continue;
    if (name === NAME && holds(definition, file, offset)) return definition;
    const inBody = body.find((token) => holds(token, file, offset) && isClock(name, token));
    if (inBody !== undefined) return inBody;
  }
  return undefined;
}

function isClock(macro: string, { kind, text }: Token): boolean {
  return text === NAME || (macro === NAME && kind === "number");
}
