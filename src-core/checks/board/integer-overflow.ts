// `int` has 16 bits on AVR, and a product of two plain numbers is an `int` whatever it is assigned to: `60 * 1000` is
// -5536 there. Constants are also cut where they are put into something narrower, as `uint8_t x = 300`.
//
// The rule computes every constant of the firmware with the sizes of its chip and reports where the value is not the
// one that was written. Idioms that only look like it are left alone: a mask turned over (`~(1 << 2)`), -1 for the
// largest unsigned value, 0x80 to 0xFF in a `char`, the low byte of a divisor in the low half of a register, and
// whatever a cast spells out. While the chip is not known, sizes are known only where AVR headers are included. Baud divisors that their register cuts are reported by board/divisor-range.

import type { Facts } from "../../facts/facts.ts";
import type { Fix } from "../../finding.ts";
import type { ConstantProblem } from "../../reader/constants/problems.ts";
import { type Token, visibleRange, visibleSpan } from "../../reader/tokens.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { IntegerType } from "../../reader/types/types.ts";
import { inserted, literalToken, spanOf } from "../literal.ts";
import type { Draft, Rule } from "../rule.ts";

export const integerOverflow: Rule = {
  id: "board/integer-overflow",
  title: "A constant that does not fit the integers of this chip",
  severity: "error",
  why:
    "On a desktop computer the same line is right, because int has 32 bits there. On the chip a time-out becomes " +
    "negative or a divisor nonsense, and nothing in the source looks wrong.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
volatile uint32_t timeout = 60 * 1000;
int main(void) {
  return timeout > 5;
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
volatile uint32_t timeout = 60UL * 1000;
int main(void) {
  return timeout > 5;
}
`,
  },
  source:
    "ISO/IEC 9899:2011, 6.3.1.3, 6.5p5 and 6.5.7p3; sizes of types: avr-gcc manual, AVR options, integer types",
  *check(facts) {
    for (const problem of facts.board.brokenConstants) {
      const draft = broken(facts, problem);
      if (draft !== undefined) yield draft;
    }
  },
};

function broken(facts: Facts, problem: ConstantProblem): Draft | undefined {
  const { first, last } = problem.expression.at;
  const span = visibleRange(first, last);
  if (dependsOnChip(problem) && !sizesAreKnown(facts)) return undefined;
  if (isCutDivisor(facts, problem)) return undefined;
  const fix = fixFor(problem);
  return {
    span: spanOf(span),
    message: `${whatHappens(problem)}${remedy(problem, fix)}`,
    source: integerOverflow.source,
    related: [],
    fixes: fix === undefined ? [] : [fix],
  };
}

/** Types of 8 bits, and those that the source names by their width, are the same on every chip. */
function dependsOnChip({ type, kind }: ConstantProblem): boolean {
  return kind !== "conversion" || (type.bits > 8 && !/^u?int\d+_t$/.test(type.name));
}

/** By the chip; or by headers that only AVR programs include. */
function sizesAreKnown({ board, program }: Facts): boolean {
  if (board.chip !== undefined) return board.chip.dataModel !== "unknown";
  return program.units.some(({ preprocessed }) =>
    preprocessed.macros.get("_BV")?.definition?.file.startsWith("<avr/"),
  );
}

/** What board/divisor-range says already. */
function isCutDivisor(facts: Facts, problem: ConstantProblem): boolean {
  if (problem.kind !== "conversion") return false;
  const at = visibleRange(problem.expression.at.first, problem.expression.at.last);
  return facts.serial.setUps.some(
    ({ rate, span }) =>
      rate.kind === "divisor" &&
      rate.held !== rate.intended &&
      span.file === at.file &&
      span.start < at.end &&
      at.start < span.end,
  );
}

function whatHappens({ kind, meant, got, type }: ConstantProblem): string {
  switch (kind) {
    case "overflow":
    case "wrap":
      return `this is ${meant ?? "too large"}, which does not fit ${typeText(type)}${becomes(got)}`;
    case "conversion":
      return `${meant ?? "this"} does not fit ${typeText(type)}${becomes(got)}`;
    case "sign":
      return `this reaches the sign bit of ${typeText(type)}${becomes(got)}${meant === undefined ? "" : `, not ${meant}`}`;
    case "shift":
      return `this shifts past the end of ${typeText(type)}${meant === undefined ? "" : `, which ${meant} does not fit`}`;
    case "division":
      return "this divides by zero";
  }
}

function typeText({ bits, name }: IntegerType): string {
  return name.includes(String(bits)) ? name : `the ${bits}-bit ${name} of this chip`;
}

function becomes(got: bigint | undefined): string {
  return got === undefined ? "" : `: it becomes ${got}`;
}

function remedy({ kind, expression }: ConstantProblem, fix: Fix | undefined): string {
  if (fix !== undefined) return `; ${fix.title.charAt(0).toLowerCase()}${fix.title.slice(1)}`;
  if (kind === "conversion") return "; use a wider type or a smaller value";
  return expression.kind === "arithmetic" ? "; make one of its numbers unsigned long (UL)" : "";
}

/** A suffix on a number that stands where the operator does, so that nothing else changes. */
function fixFor({ kind, expression }: ConstantProblem): Fix | undefined {
  if (kind === "conversion" || kind === "division" || expression.kind !== "arithmetic") return undefined;
  const { left, right, operator } = expression;
  const sides = operator === "*" || operator === "+" ? [left, right] : [left];
  for (const side of sides) {
    const token = literalHere(side, side === left ? right : left);
    if (token === undefined || !/^(0[xX][0-9a-fA-F]+|\d+)[uU]?$/.test(token.text)) continue;
    const text = `${token.text.replace(/[uU]$/, "")}UL`;
    const written = token.text.toUpperCase().endsWith("U") ? "L" : "UL";
    return { title: `Write ${text}`, edits: [inserted(token.file, token.end, written)] };
  }
  const start = visibleSpan(left.at.first);
  if (operator !== "*" || left.at.first.macro?.within !== undefined) return undefined;
  if (left.at.first.macro !== undefined && left.at.first.macro === right.at.first.macro) return undefined;
  return { title: "Write 1UL * in front of it", edits: [inserted(start.file, start.start, "1UL * ")] };
}

/** The number's own text, where it is written beside the other side and not hidden in a macro or constant. */
function literalHere(side: TypedExpression, other: TypedExpression): Token | undefined {
  if (side.kind === "variable" || (side.kind === "convert" && side.reason === "explicit")) return undefined;
  if (side.kind === "convert" && side.operand.kind === "variable") return undefined;
  const token = literalToken(side);
  if (token === undefined) return undefined;
  for (let use = other.at.first.macro; ; use = use?.within) {
    if (use === token.macro) return token;
    if (use === undefined) return undefined;
  }
}
