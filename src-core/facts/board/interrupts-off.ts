import type { Program } from "../../reader/program/program.ts";
import type { Token } from "../../reader/tokens.ts";
import type { FunctionSymbol, TypedExpression, TypedStatement } from "../../reader/typed/nodes.ts";
import { callOf, namedCallOf } from "./calls.ts";

/** Calls after which no interrupt comes until it is allowed again, and those that allow it. */
const TURN_OFF = new Set([
  "cli",
  "noInterrupts",
  "__builtin_avr_cli",
  "__disable_irq",
  "save_and_disable_interrupts",
]);
const TURN_ON = new Set(["sei", "interrupts", "__builtin_avr_sei", "__enable_irq", "restore_interrupts"]);

/** Calls of functions that do so for others are followed this deep. */
const DEEPEST = 3;

/**
 * `true` where the statement turns interrupts off, `false` where it turns them on, undefined where neither. Given the
 * program, a call of one of its functions counts as what that leaves behind.
 */
export function interruptSwitchOf(
  statement: TypedStatement,
  program?: Program,
  depth = 0,
): boolean | undefined {
  const names = [...macrosOf(statement.at.first)];
  if (statement.kind === "expression") {
    const call = namedCallOf(statement.expression);
    if (call !== undefined) names.push(call.name);
    if (restoresStatus(statement)) return false;
    const callee = callOf(statement.expression)?.callee;
    if (program !== undefined && callee !== undefined && !callee.standIn && depth < DEEPEST) {
      return leftBehind(callee, program, depth + 1);
    }
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

/** The last switch among the statements of a function, blocks included; conditions are not gone into. */
function leftBehind(callee: FunctionSymbol, program: Program, depth: number): boolean | undefined {
  let off: boolean | undefined;
  const follow = (statements: readonly TypedStatement[]): void => {
    for (const statement of statements) {
      if (statement.kind === "block") follow(statement.statements);
      else off = interruptSwitchOf(statement, program, depth) ?? off;
    }
  };
  follow(program.definitionOf(callee)?.definition?.body.statements ?? []);
  return off;
}

/** An object whose constructor turns interrupts off: they stay so until its block ends. */
export function turnsOffWhileAlive(
  { variables }: Extract<TypedStatement, { kind: "variables" }>,
  program: Program,
): boolean {
  return variables.some(({ initializer }) => {
    if (initializer?.kind !== "constructor" || initializer.constructor === undefined) return false;
    return leftBehind(initializer.constructor, program, 1) === true;
  });
}

/** Registers whose bits let single interrupts come. */
export const ENABLES = /^(EIMSK|PCICR|PCMSK\d?|GIMSK|GICR|TIMSK\d?|UCSR\d?B|USICR)$/;

/** `true` where the statement turns single interrupts off, `false` where it turns some on. */
export function handlerSwitchOf(statement: TypedStatement): boolean | undefined {
  if (statement.kind !== "expression") return undefined;
  const { expression } = statement;
  const name = namedCallOf(expression)?.name ?? "";
  if (/^detach\w*interrupt/i.test(name)) return true;
  if (/^attach\w*interrupt/i.test(name)) return false;
  if (expression.kind !== "assign" && expression.kind !== "compound-assign") return undefined;
  const { first } = expression.target.at;
  if (![first.text, ...macrosOf(first)].some((each) => ENABLES.test(each))) return undefined;
  if (expression.kind === "compound-assign") {
    return expression.operator === "&" ? true : expression.operator === "|" ? false : undefined;
  }
  return isZero(expression.value) || masksBits(expression.value);
}

function isZero(value: TypedExpression): boolean {
  if (value.kind === "convert") return isZero(value.operand);
  return value.kind === "integer" && value.value === 0n;
}

/** `EIMSK = EIMSK & ~mask`. */
function masksBits(value: TypedExpression): boolean {
  if (value.kind === "convert") return masksBits(value.operand);
  return value.kind === "arithmetic" && value.operator === "&";
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
