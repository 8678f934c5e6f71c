import { evaluate } from "../reader/constants/evaluate.ts";
import { expressionAt } from "../reader/program/expression-queries.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { typeText } from "../reader/types/text.ts";
import { type Explanation, explanation } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A named constant, a macro or a computed expression: its value and type on the target. */
export function explainConstant({ facts, unit, file, offset }: Place): Explanation | undefined {
  const found = expressionAt(unit, file, offset);
  if (found === undefined || saysItself(found.expression)) return undefined;
  const value = evaluate(found.expression, facts.program.model);
  const type = typeText(found.expression.type);
  switch (value.kind) {
    case "integer":
      return explanation(found.span, `${value.value}${inHex(value.value)}`, [`\`${type}\` on this chip.`]);
    case "floating":
      return explanation(found.span, String(value.value), [`\`${type}\` on this chip.`]);
    case "address":
    case "unknown":
      return undefined;
  }
}

/** A plain decimal number that stands there itself. */
function saysItself({ kind, at }: TypedExpression): boolean {
  return (
    (kind === "integer" || kind === "floating") && at.first.macro === undefined && /^\d+$/.test(at.first.text)
  );
}

function inHex(value: bigint): string {
  return value > 9n ? ` = 0x${value.toString(16).toUpperCase()}` : "";
}
