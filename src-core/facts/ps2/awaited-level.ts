import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { LoopEvent } from "../walk/events.ts";
import type { Value } from "../walk/values.ts";
import type { LineTraces } from "./line-traces.ts";
import type { Line } from "./ps2-facts.ts";
import { type Level, levelOfComparison, opposite } from "./wait-levels.ts";

/**
 * The level at which a loop that waits for a line is left; undefined for a loop that waits for something else, and where
 * the code does not tell for certain.
 */
export function awaitedLevel(loop: LoopEvent, line: Line, lines: LineTraces): Level | undefined {
  if (!loop.waitsFor.some((trace) => lines.lineOf(trace) === line)) return undefined;
  const found: Level[] = [];
  for (const term of loop.terms) {
    const level = certainLevel(term, line, lines);
    if (level !== undefined) found.push(opposite(level));
  }
  for (const event of loop.passes.at(-1) ?? []) {
    if (event.kind !== "branch") continue;
    const level = certainLevel(event.condition, line, lines);
    const [then, otherwise] = event.sides;
    if (level === undefined || then === undefined) continue;
    if (then.some(({ kind }) => kind === "leave")) found.push(level);
    else if (otherwise?.some(({ kind }) => kind === "leave") === true) found.push(opposite(level));
  }
  const [first] = found;
  return found.every((level) => level === first) ? first : undefined;
}

/** The level of the line at which a value is not zero. */
export function certainLevel(value: Value | undefined, line: Line, lines: LineTraces): Level | undefined {
  if (value?.kind !== "unknown") return undefined;
  if (value.compared !== undefined)
    return levelOfComparison(value.compared, (compared) => certainLevel(compared, line, lines));
  const [trace] = value.traces;
  if (trace === undefined || value.traces.length > 1 || lines.lineOf(trace) !== line) return undefined;
  if (value.copied !== undefined) return value.copied.same !== 0 ? "high" : "low";
  // What the core's function gives comes from no expression; a choice comes from one of its sides.
  return value.from === undefined || isReading(value.from) ? "high" : undefined;
}

/** The level itself, or bits cut out of a register: nothing that turns it over or hides it in a choice. */
function isReading(expression: TypedExpression): boolean {
  switch (expression.kind) {
    case "convert":
      return isReading(expression.operand);
    case "arithmetic":
      return expression.operator === "&" || expression.operator === ">>" ? isReading(expression.left) : false;
    case "call":
      return expression.callee.kind === "function" && expression.callee.function.name === "digitalRead";
    case "unresolved":
      return expression.form === "call" && expression.name === "digitalRead";
    case "dereference":
      return true;
    default:
      return false;
  }
}
