import type { Chip } from "../../model/chips/chip.ts";
import type { PinName } from "../pins/pin-change.ts";
import type { LoopEvent } from "../walk/events.ts";
import { numberOf, type UnknownValue, type Value } from "../walk/values.ts";
import { pinOfTrace } from "./watched-pins.ts";

export type Level = "high" | "low";

/** The level of a pin at which a value is not zero; undefined where it does not hang on the pin alone. */
export function levelOf(value: Value | undefined, pin: PinName, chip: Chip | undefined): Level | undefined {
  if (value?.kind !== "unknown") return undefined;
  if (value.compared !== undefined)
    return levelOfComparison(value.compared, (compared) => levelOf(compared, pin, chip));
  const [trace] = value.traces;
  if (trace === undefined || value.traces.length > 1 || pinOfTrace(chip, trace) !== pin) return undefined;
  const { copied } = value;
  return copied !== undefined && copied.same === 0 && copied.flipped !== 0 ? "low" : "high";
}

/** The level at which a comparison of something with a constant holds; `levelOf` gives that at which it is not zero. */
export function levelOfComparison(
  { operator, left, right }: NonNullable<UnknownValue["compared"]>,
  levelOf: (compared: Value) => Level | undefined,
): Level | undefined {
  const isRight = numberOf(right) !== undefined;
  const constant = numberOf(isRight ? right : left);
  const level = levelOf(isRight ? left : right);
  if (constant === undefined || level === undefined) return undefined;
  const isZero = constant === 0;
  switch (operator) {
    case "==":
      return isZero ? opposite(level) : level;
    case "!=":
      return isZero ? level : opposite(level);
    // Nothing that is read from a port is below zero.
    case ">":
      return isZero && isRight ? level : undefined;
    case "<":
      return isZero && !isRight ? level : undefined;
    default:
      return undefined;
  }
}

export function opposite(level: Level): Level {
  return level === "high" ? "low" : "high";
}

/**
 * Whether a loop may be one that waits for a pin to fall: it goes on while the pin is high, or nobody can tell
 * at which level it goes on.
 */
export function mayWaitForFall(loop: LoopEvent, pin: PinName, chip: Chip | undefined): boolean {
  if (!loop.waitsFor.some((trace) => pinOfTrace(chip, trace) === pin)) return false;
  const whole = levelOf(loop.condition, pin, chip);
  if (whole !== undefined) return whole === "high";
  const levels: Level[] = [];
  for (const event of loop.passes.at(-1) ?? []) {
    if (event.kind !== "branch") continue;
    const level = levelOf(event.condition, pin, chip);
    if (level === undefined) continue;
    const [then] = event.sides;
    const leaves = then?.some(({ kind }) => kind === "leave") === true;
    levels.push(leaves ? opposite(level) : level);
  }
  return levels.length === 0 || levels.includes("high");
}
