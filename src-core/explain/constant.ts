import { evaluate } from "../reader/constants/evaluate.ts";
import type { TypedExpression } from "../reader/typed/nodes.ts";
import { typeText } from "../reader/types/text.ts";
import type { Type } from "../reader/types/types.ts";
import { innermost } from "./around.ts";
import { type Explanation, explanation, type Telling } from "./explanation.ts";
import { macroUseAt } from "./macro-uses.ts";
import type { Place } from "./place.ts";

/** A named constant, a macro or a computed expression: its value and type on the target. */
export function explainConstant(place: Place): Explanation | undefined {
  const inner = innermost(place);
  const use = macroUseAt(place);
  if (use?.expression !== undefined && (inner === undefined || isSmaller(use.call, inner.span))) {
    const told = constantValue(place, use.expression, use.name);
    return told && explanation(use.call, told.heading, told.lines);
  }
  if (inner === undefined || saysItself(inner.expression)) return undefined;
  const isWhole = use !== undefined && use.call.start === inner.span.start && use.call.end === inner.span.end;
  const told = constantValue(place, inner.expression, isWhole ? use.name : nameOf(inner.expression));
  return told && explanation(inner.span, told.heading, told.lines);
}

/** The value of an expression under a name; undefined where it is not known or says nothing. */
export function constantValue(
  { facts }: Place,
  expression: TypedExpression,
  name: string | undefined,
): Telling | undefined {
  if (name !== undefined && sayNothing.has(name)) return undefined;
  const value = evaluate(expression, facts.program.model);
  if (value.kind !== "integer" && value.kind !== "floating") return undefined;
  return valueTelling(value.value, expression.type, name);
}

export function valueTelling(value: bigint | number, type: Type, name: string | undefined): Telling {
  const figure = typeof value === "bigint" ? `${value}${inHex(value)}` : String(value);
  return { heading: name === undefined ? figure : `${name} = ${figure}`, lines: [typeLine(type)] };
}

/** Names that everybody reads for what they are. */
const sayNothing: ReadonlySet<string> = new Set([
  "true",
  "false",
  "NULL",
  "HIGH",
  "LOW",
  "INPUT",
  "OUTPUT",
  "INPUT_PULLUP",
]);

function typeLine(type: Type): string {
  const bits = type.kind === "integer" && type.rank !== "bool" ? `: ${type.bits} bits on this chip` : "";
  return `Type \`${typeText(type)}\`${bits}.`;
}

function nameOf(expression: TypedExpression): string | undefined {
  switch (expression.kind) {
    case "variable":
      return expression.variable.name;
    case "enumerator":
      return expression.enumerator.name;
    default:
      return expression.at.first === expression.at.last && expression.at.first.macro === undefined
        ? expression.at.first.text
        : undefined;
  }
}

/** A plain decimal number, with a sign or without. */
function saysItself(expression: TypedExpression): boolean {
  if (expression.kind === "negate") return saysItself(expression.operand);
  if (expression.kind === "convert")
    return expression.reason !== "explicit" && saysItself(expression.operand);
  const { kind, at } = expression;
  return (
    (kind === "integer" || kind === "floating") &&
    at.first.macro === undefined &&
    /^[\d.]+$/.test(at.first.text)
  );
}

function inHex(value: bigint): string {
  return value > 9n ? ` = 0x${value.toString(16).toUpperCase().padStart(2, "0")}` : "";
}

function isSmaller(a: { start: number; end: number }, b: { start: number; end: number }): boolean {
  return a.end - a.start < b.end - b.start;
}
