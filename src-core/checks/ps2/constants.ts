import type { Facts } from "../../facts/facts.ts";
import type { Span } from "../../finding.ts";
import type { Quantity } from "../../model/quantities.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft } from "../rule.ts";
import { sourcesOf } from "./sources.ts";

/**
 * Constants of which a note says that they are this quantity, without those that `judged` expressions come from:
 * they were looked at where they are used.
 */
export function notJudged(
  facts: Facts,
  of: Quantity,
  judged: readonly TypedExpression[],
): Facts["ps2"]["constants"] {
  const used = judged.flatMap((expression) => literalToken(expression) ?? []);
  const isUsed = ({ file, start, end }: Span): boolean =>
    used.some((token) => token.file === file && token.start >= start && token.end <= end);
  return facts.ps2.constants.filter(({ quantity, span }) => quantity === of.id && !isUsed(span));
}

/**
 * Constants of which a note says that they are this quantity, and that do not reach its least value.
 */
export function* constantTooLow(
  facts: Facts,
  of: Quantity,
  judged: readonly TypedExpression[],
  what: string,
): Generator<Draft> {
  const { min } = of;
  if (min === undefined) return;
  for (const constant of notJudged(facts, of, judged)) {
    if (constant.value >= min) continue;
    const { span } = constant;
    yield {
      span: spanOf(span),
      message: `${constant.name} is ${constant.value} ${of.unit}; ${what} at least ${min} ${of.unit}`,
      measured: { value: constant.value, unit: of.unit },
      limit: { atLeast: min, unit: of.unit },
      source: sourcesOf(of),
      related: [{ span: spanOf(constant.note), message: "what the note says it is" }],
      fixes: [{ title: `Set ${constant.name} to ${min}`, edits: [replaced(span, String(min))] }],
    };
  }
}
