import { delayScale } from "../facts/board/delay-calls.ts";
import { clockText, plain, timeText } from "../figures.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { expressionsAround } from "../reader/program/expression-queries.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { type Explanation, explanation } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A call that does nothing but pass time. */
export function explainDelay({ facts, unit, file, offset }: Place): Explanation | undefined {
  for (const { expression, span } of expressionsAround(unit, file, offset).toReversed()) {
    const name = calledName(expression);
    const argument = expression.kind === "call" ? expression.arguments[0] : undefined;
    const scale = name === undefined ? undefined : delayScale(name);
    if (name === undefined || argument === undefined || scale === undefined) continue;
    const value = evaluate(argument, facts.program.model);
    if (value.kind !== "integer" && value.kind !== "floating") return undefined;
    const amount = Number(value.value);
    if (scale.kind === "time") return explanation(span, `${name} waits ${timeText(amount * scale.us)}`, []);
    const cycles = (amount === 0 ? scale.whole : amount) * scale.each;
    const clockHz = facts.board.clock?.hz;
    const time =
      clockHz === undefined ? "" : `, ${timeText((cycles * 1e6) / clockHz)} at ${clockText(clockHz)}`;
    return explanation(span, `${name} waits ${plain(cycles, 0)} cycles${time}`, []);
  }
  return undefined;
}

function calledName(expression: TypedExpression): string | undefined {
  if (expression.kind !== "call" || expression.callee.kind !== "function") return undefined;
  return expression.callee.function.name;
}
