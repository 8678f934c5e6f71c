import type { Target } from "../notes/attachment/declared.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { expressionAt } from "../reader/program/expression-queries.ts";
import type { Place } from "./place.ts";

/** The number that a declaration stands for; undefined where it is none or not known. */
export function valueOfTarget({ facts, unit }: Place, target: Target): number | undefined {
  const expression = expressionOf(unit, target);
  if (expression !== undefined) {
    const value = evaluate(expression, facts.program.model);
    return value.kind === "integer" || value.kind === "floating" ? Number(value.value) : undefined;
  }
  return target.kind === "enumerator" ? Number(target.enumerator.value) : undefined;
}

function expressionOf(unit: Place["unit"], target: Target) {
  if (target.kind === "variable") {
    const { initializer } = target.variable;
    return initializer?.kind === "value" ? initializer.value : undefined;
  }
  if (target.kind !== "macro") return undefined;
  const { definition } = target.macro;
  for (const use of unit.preprocessed.uses) {
    if (use.definition?.file !== definition?.file || use.definition?.start !== definition?.start) continue;
    const found = expressionAt(unit, use.call.file, use.call.start);
    if (found !== undefined && found.span.start === use.call.start && found.span.end === use.call.end) {
      return found.expression;
    }
  }
  return undefined;
}
