import { type DelayScale, delayScale } from "../facts/board/delay-calls.ts";
import { clockText, plain, timeText } from "../figures.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { visibleRange } from "../reader/tokens.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { around } from "./around.ts";
import { type Explanation, explanation } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A call that does nothing but pass time. */
export function explainDelay(place: Place): Explanation | undefined {
  const { facts } = place;
  for (const { expression, span } of around(place).toReversed()) {
    const name = calledName(expression);
    const argument = expression.kind === "call" ? expression.arguments[0] : undefined;
    const scale = name === undefined ? undefined : delayScale(name);
    if (name === undefined || argument === undefined || scale === undefined) continue;
    const value = evaluate(argument, facts.program.model);
    if (value.kind !== "integer" && value.kind !== "floating") return undefined;
    const amount = Number(value.value);
    return explanation(span, headingOf(name, scale, amount), [
      clockLine(scale, amount, facts.board.clock?.hz),
    ]);
  }
  return undefined;
}

/** The argument says what the delay is for: a place in the name of the function stands for it. */
export function delayArgument(place: Place): Pick<Place, "file" | "offset"> | undefined {
  for (const { expression } of around(place).toReversed()) {
    const name = calledName(expression);
    if (name === undefined || expression.kind !== "call") continue;
    const argument = delayScale(name) === undefined ? undefined : expression.arguments[0];
    if (argument === undefined) return undefined;
    const { file, start } = visibleRange(argument.at.first, argument.at.last);
    return { file, offset: start };
  }
  return undefined;
}

function headingOf(name: string, scale: DelayScale, amount: number): string {
  return scale.kind === "time"
    ? `${name} waits ${timeText(amount * scale.us)}`
    : `${name} waits ${plain(cyclesOf(scale, amount), 0)} cycles`;
}

function cyclesOf({ each, whole }: Extract<DelayScale, { kind: "cycles" }>, amount: number): number {
  return (amount === 0 ? whole : amount) * each;
}

function clockLine(scale: DelayScale, amount: number, clockHz: number | undefined): string {
  if (clockHz === undefined) {
    return scale.kind === "time" ? "" : "The chip's clock is not known, so neither is the time.";
  }
  const at = clockText(clockHz);
  return scale.kind === "time"
    ? `${plain((amount * scale.us * clockHz) / 1e6, 0)} cycles at ${at}.`
    : `${timeText((cyclesOf(scale, amount) * 1e6) / clockHz)} at ${at}.`;
}

function calledName(expression: TypedExpression): string | undefined {
  if (expression.kind !== "call" || expression.callee.kind !== "function") return undefined;
  return expression.callee.function.name;
}
