import type { Facts } from "../../facts/facts.ts";
import type { Quantity } from "../../model/quantities.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { literalToken, replaced, spanOf } from "../literal.ts";
import type { Draft } from "../rule.ts";
import { sourcesOf } from "./sources.ts";

/**
 * Constants of which a note says that they are this quantity, and that do not reach its least value. Those that
 * `judged` expressions come from were looked at where they are used.
 */
export function* constantTooLow(
  facts: Facts,
  of: Quantity,
  judged: readonly TypedExpression[],
  what: string,
): Generator<Draft> {
  const { min } = of;
  if (min === undefined) return;
  const used = judged.flatMap((expression) => literalToken(expression) ?? []);
  for (const constant of facts.ps2.constants) {
    if (constant.quantity !== of.id || constant.value >= min) continue;
    const { span } = constant;
    if (used.some(({ file, start, end }) => file === span.file && start >= span.start && end <= span.end))
      continue;
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
