import type { MacroUse } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { walkExpression } from "../../reader/typed/walk.ts";
import type { CallEvent } from "../walk/events.ts";
import { integerOf } from "../walk/values.ts";

/** Names under which code keeps the rate of a line. */
const NAMES_A_RATE = /baud|bps|bit_?rate/i;

/**
 * The rate that a divisor was computed from, where the expression names it: a macro, a constant or a parameter
 * called `BAUD` or the like. `calls` are those that led to the expression.
 */
export function namedBaud(expression: TypedExpression, calls: readonly CallEvent[]): number | undefined {
  const leaves: TypedExpression[] = [];
  walkExpression(expression, {
    expression(inner) {
      leaves.push(inner);
      return true;
    },
  });
  const numbers = numbersByMacro(leaves);
  for (const leaf of leaves) {
    const found = rateIn(leaf, numbers, calls);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** How many numbers of the expression each use of a macro brought in. */
function numbersByMacro(leaves: readonly TypedExpression[]): ReadonlyMap<MacroUse, number> {
  const counts = new Map<MacroUse, number>();
  for (const leaf of leaves) {
    const { macro } = leaf.at.first;
    if (macro === undefined || (leaf.kind !== "integer" && leaf.kind !== "floating")) continue;
    counts.set(macro, (counts.get(macro) ?? 0) + 1);
  }
  return counts;
}

function rateIn(
  expression: TypedExpression,
  numbers: ReadonlyMap<MacroUse, number>,
  calls: readonly CallEvent[],
): number | undefined {
  switch (expression.kind) {
    case "integer":
    case "floating":
      return isNamedNumber(expression, numbers) ? Number(expression.value) : undefined;
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

/** The number is all that its macro brings in: `#define BAUD 1200`, not the 16 of `#define BAUD_DIVISOR(b) ...`. */
function isNamedNumber(expression: TypedExpression, numbers: ReadonlyMap<MacroUse, number>): boolean {
  const { macro } = expression.at.first;
  if (macro === undefined || !NAMES_A_RATE.test(macro.name) || numbers.get(macro) !== 1) return false;
  return macro.call.end - macro.call.start === macro.name.length;
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
