import type { Register } from "../model/chips/chip.ts";
import { registerAt } from "../model/chips.ts";
import { addressOf } from "../reader/constants/address.ts";
import { evaluate } from "../reader/constants/evaluate.ts";
import { expressionsAround } from "../reader/program/expression-queries.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { type Explanation, explanation } from "./explanation.ts";
import type { Place } from "./place.ts";

/** A register of the chip, or a value that is written to one: its bits by name. */
export function explainRegister(place: Place): Explanation | undefined {
  const around = expressionsAround(place.unit, place.file, place.offset);
  const inner = around.reduce((best, each) => (shorter(each, best) ? each : best), around[0]);
  if (inner === undefined) return undefined;
  const named = registerOf(place, inner.expression);
  if (named !== undefined) return explanation(inner.span, headingOf(named), bitLines(named, undefined));
  for (const { expression } of around.toReversed()) {
    if (expression.kind !== "assign" && expression.kind !== "compound-assign") continue;
    const register = registerOf(place, expression.target);
    const value = evaluate(expression.value, place.facts.program.model);
    if (register === undefined || value.kind !== "integer") return undefined;
    const written = Number(BigInt.asUintN(register.width, value.value));
    const verb = expression.kind === "assign" ? "=" : `${expression.operator}=`;
    return explanation(
      inner.span,
      `${register.name} ${verb} ${hex(written, register)}`,
      bitLines(register, written),
    );
  }
  return undefined;
}

function shorter(
  a: { span: { start: number; end: number } },
  b: { span: { start: number; end: number } } | undefined,
): boolean {
  return b === undefined || a.span.end - a.span.start < b.span.end - b.span.start;
}

function registerOf({ facts }: Place, expression: TypedExpression): Register | undefined {
  const { chip } = facts.board;
  if (chip?.kind !== "avr" || !expression.lvalue) return undefined;
  const address = addressOf(expression, facts.program.model);
  if (address === undefined || expression.type.kind !== "integer") return undefined;
  return registerAt(chip, address, expression.type.bits === 16 ? 16 : 8);
}

function headingOf({ name, address, group, width }: Register): string {
  return `${name}: ${width}-bit register at 0x${address.toString(16).toUpperCase()} (${group})`;
}

/** Bits from the highest down; of a value, those that are 1. */
function bitLines({ bits }: Register, value: number | undefined): readonly string[] {
  const shown = value === undefined ? bits : bits.filter(({ bit }) => (value & (1 << bit)) !== 0);
  if (shown.length === 0) return [];
  const named = [...shown].reverse().map(({ name, bit }) => `\`${name}\` (bit ${bit})`);
  return [value === undefined ? `Bits: ${named.join(", ")}.` : `Bits that are 1: ${named.join(", ")}.`];
}

function hex(value: number, { width }: Register): string {
  return `0x${value
    .toString(16)
    .toUpperCase()
    .padStart(width / 4, "0")}`;
}
