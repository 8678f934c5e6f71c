import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import { macrosOf } from "../board/interrupts-off.ts";
import type { CallEvent } from "../walk/events.ts";
import { integerOf } from "../walk/values.ts";

/** Names under which code keeps the rate of a line. */
const NAMES_A_RATE = /baud|bps|bit_?rate/i;

/**
 * The rate that a divisor was computed from, where the expression names it: a macro, a constant or a parameter
 * called `BAUD` or the like. `calls` are those that led to the expression.
 */
export function namedBaud(expression: TypedExpression, calls: readonly CallEvent[]): number | undefined {
  let found: number | undefined;
  walkExpression(expression, {
    expression(inner) {
      found ??= rateIn(inner, calls);
      return found === undefined;
    },
  });
  return found;
}

function rateIn(expression: TypedExpression, calls: readonly CallEvent[]): number | undefined {
  switch (expression.kind) {
    case "integer":
      return innermostMacroNamesRate(expression) ? Number(expression.value) : undefined;
    case "floating":
      return innermostMacroNamesRate(expression) ? expression.value : undefined;
    case "enumerator":
      return NAMES_A_RATE.test(expression.enumerator.name) ? Number(expression.enumerator.value) : undefined;
    case "variable": {
      const { variable } = expression;
      if (!NAMES_A_RATE.test(variable.name)) return undefined;
      if (variable.storage === "parameter") return argumentFor(variable.name, calls);
      const first = variable.initializer?.kind === "value" ? variable.initializer.value : undefined;
      return first && literalIn(first);
    }
    default:
      return undefined;
  }
}

/** The literal is the body of a macro with such a name, not merely an argument or factor of one. */
function innermostMacroNamesRate(expression: TypedExpression): boolean {
  const [innermost] = macrosOf(expression.at.first);
  return innermost !== undefined && NAMES_A_RATE.test(innermost);
}

function literalIn(expression: TypedExpression): number | undefined {
  if (expression.kind === "convert") return literalIn(expression.operand);
  return expression.kind === "integer" ? Number(expression.value) : undefined;
}

function argumentFor(name: string, calls: readonly CallEvent[]): number | undefined {
  const call = calls.at(-1);
  const index = call?.function.parameterNames.indexOf(name) ?? -1;
  return index < 0 ? undefined : integerOf(call?.arguments[index]);
}
