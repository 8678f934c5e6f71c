import type { Span } from "../finding.ts";
import { type ExpressionAt, expressionsAround } from "../reader/program/expression-queries.ts";
import { visibleSpan } from "../reader/tokens.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { holds } from "./explanation.ts";
import type { Place } from "./place.ts";

const kept = new WeakMap<Place, readonly ExpressionAt[]>();

/** Every written expression around a place, outer ones first. */
export function around(place: Place): readonly ExpressionAt[] {
  const known = kept.get(place);
  if (known !== undefined) return known;
  const found = expressionsAround(place.unit, place.file, place.offset);
  kept.set(place, found);
  return found;
}

/** The smallest of them; of several that came out of one macro call, the outermost. */
export function innermost(place: Place): ExpressionAt | undefined {
  let best: ExpressionAt | undefined;
  for (const each of around(place)) {
    if (best === undefined || lengthOf(each.span) < lengthOf(best.span)) best = each;
  }
  return best;
}

/** The expression below conversions that the source does not spell out. */
export function written(expression: TypedExpression): TypedExpression {
  return expression.kind === "convert" && expression.reason !== "explicit"
    ? written(expression.operand)
    : expression;
}

/**
 * Where a place lies in an operand, although both came out of one macro call: in the argument, as `_BV(CLOCK)` is
 * of `CLOCK`. Undefined where the place lies elsewhere.
 */
export function partUnder({ file, offset }: Place, { at }: TypedExpression, whole: Span): Span | undefined {
  const spans: Span[] = [visibleSpan(at.first)];
  for (let use = at.first.macro; use !== undefined; use = use.within) spans.push(use.call);
  return spans.find((span) => holds(span, file, offset) && lengthOf(span) < lengthOf(whole));
}

function lengthOf({ start, end }: Span): number {
  return end - start;
}
