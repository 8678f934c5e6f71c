import { hexText } from "../figures.ts";
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
  const { heading, lines } = valueTelling(value.value, expression.type, name);
  return { heading, lines: [problemLine(facts, expression), ...lines] };
}

/** Where the chip cannot compute what is meant. */
function problemLine({ board }: Place["facts"], expression: TypedExpression): string | undefined {
  const problem = board.brokenConstants.find((each) => each.expression === expression);
  if (problem?.meant === undefined) return undefined;
  return `Meant is ${problem.meant}, which \`${typeText(problem.type)}\` cannot hold on this chip.`;
}

export function valueTelling(value: bigint | number, type: Type, name: string | undefined): Telling {
  const hex = typeof value === "bigint" ? inHex(value) : "";
  const figure = hex === "" || isHex(name) ? String(value) : `${value} = ${hex}`;
  const bits = isHex(name) && typeof value === "bigint" ? bitLine(value) : undefined;
  return { heading: name === undefined ? figure : `${name} = ${figure}`, lines: [bits, typeLine(type)] };
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
  return `Type \`${typeText(type).replace(/^const /, "")}\`${bits}.`;
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
  return value > 9n ? hexText(value) : "";
}

function isHex(name: string | undefined): boolean {
  return name !== undefined && /^0[xb]/i.test(name);
}

/** A number in hexadecimal or binary is mostly a mask. */
function bitLine(value: bigint): string | undefined {
  const bits = [...value.toString(2)].reverse().flatMap((digit, bit) => (digit === "1" ? [bit] : []));
  if (bits.length === 0 || value < 0n) return undefined;
  return bits.length === 1 ? `Bit ${bits[0]} alone.` : `Bits that are 1: ${bits.reverse().join(", ")}.`;
}

function isSmaller(a: { start: number; end: number }, b: { start: number; end: number }): boolean {
  return a.end - a.start < b.end - b.start;
}
