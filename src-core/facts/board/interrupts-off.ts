import type { Token } from "../../reader/tokens.ts";
import type { TypedStatement } from "../../reader/typed/nodes.ts";
import { namedCallOf } from "./calls.ts";

/** Calls after which no interrupt comes until it is allowed again, and those that allow it. */
const TURN_OFF = new Set([
  "cli",
  "noInterrupts",
  "__builtin_avr_cli",
  "__disable_irq",
  "save_and_disable_interrupts",
]);
const TURN_ON = new Set(["sei", "interrupts", "__builtin_avr_sei", "__enable_irq", "restore_interrupts"]);

/** `true` where the statement turns interrupts off, `false` where it turns them on, undefined where neither. */
export function interruptSwitchOf(statement: TypedStatement): boolean | undefined {
  const names = [...macrosOf(statement.at.first)];
  if (statement.kind === "expression") {
    const call = namedCallOf(statement.expression);
    if (call !== undefined) names.push(call.name);
    if (restoresStatus(statement)) return false;
  }
  if (statement.kind === "assembly") names.push(...statement.text.split(/\W+/));
  if (names.some((name) => TURN_OFF.has(name))) return true;
  if (names.some((name) => TURN_ON.has(name))) return false;
  return undefined;
}

/** `ATOMIC_BLOCK`: interrupts are off in the statement's body. */
export function keepsInterruptsOff(statement: TypedStatement): boolean {
  return comesFromMacro(statement.at.first, "ATOMIC_BLOCK");
}

/** `SREG = saved;` */
function restoresStatus(statement: Extract<TypedStatement, { kind: "expression" }>): boolean {
  const { expression } = statement;
  if (expression.kind !== "assign") return false;
  const first = expression.target.at.first;
  return first.text === "SREG" || comesFromMacro(first, "SREG");
}

function comesFromMacro(token: Token, name: string): boolean {
  for (let use = token.macro; use !== undefined; use = use.within) if (use.name === name) return true;
  return false;
}

/** Names of the macros whose expansion brought a token here, innermost first. */
export function* macrosOf(token: Token): Generator<string> {
  for (let use = token.macro; use !== undefined; use = use.within) yield use.name;
}
