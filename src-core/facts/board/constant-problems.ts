import { evaluator } from "../../reader/constants/evaluate.ts";
import type { ConstantProblem } from "../../reader/constants/problems.ts";
import { constantProblems } from "../../reader/constants/unit-problems.ts";
import { KeptResults } from "../../reader/typed/kept-results.ts";
import type { TypedExpression, TypedUnit } from "../../reader/typed/nodes.ts";
import { type PieceOfCode, piecesOf, walkExpression, walkPiece, walkUnit } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { macrosOf } from "./interrupts-off.ts";

/** Constants of the firmware that go wrong on its chip, each once; idioms that only look so are left out. */
export function brokenConstants(units: readonly TypedUnit[]): readonly ConstantProblem[] {
  const found = new Map<string, ConstantProblem>();
  for (const unit of units) {
    const problems = [
      ...constantProblems(unit).filter(matters),
      ...[...piecesOf(unit)].flatMap((piece) => turnedNegative(unit, piece)),
    ];
    if (problems.length === 0) continue;
    const halves = halvesOfRegisters(unit);
    for (const problem of problems) {
      const { first, last } = problem.expression.at;
      const place = `${first.file} ${first.start} ${last.file} ${last.end} ${problem.kind}`;
      if (!halves.has(problem.expression) && !found.has(place)) found.set(place, problem);
    }
  }
  return [...found.values()];
}

/** `UBRR0L = divisor;`: the low byte of a pair takes what fits, the high byte the rest. */
function halvesOfRegisters(unit: TypedUnit): ReadonlySet<TypedExpression> {
  const halves = new Set<TypedExpression>();
  walkUnit(unit, {
    expression(expression) {
      if (expression.kind === "assign" && isLowHalf(expression.target)) halves.add(expression.value);
      return true;
    },
  });
  return halves;
}

function isLowHalf(target: TypedExpression): boolean {
  const { first } = target.at;
  return [first.text, ...macrosOf(first)].some((name) => /^[A-Z]+\d?[A-Z]?L$/.test(name));
}

function matters(problem: ConstantProblem): boolean {
  switch (problem.kind) {
    case "overflow":
    case "shift":
    case "sign":
      return true;
    case "wrap":
      return problem.expression.kind === "arithmetic" && problem.expression.operator === "*";
    case "conversion":
      return losesBits(problem);
    case "division":
      return false;
  }
}

/**
 * `-1` for the largest unsigned value, `0xFE` in a `char` and `~0x80` in a byte are common ways to write a pattern of
 * bits; a value that has more bits than its target is not.
 */
function losesBits({ meant, type, expression }: ConstantProblem): boolean {
  if (meant === undefined) return false;
  const half = 1n << BigInt(type.bits - 1);
  if (meant >= 2n * half) return true;
  return meant < -half && !turnsBitsOver(expression);
}

function turnsBitsOver(expression: TypedExpression): boolean {
  let found = false;
  walkExpression(expression, {
    expression(inner) {
      found ||= inner.kind === "complement";
      return !found;
    },
  });
  return found;
}

/**
 * `int count = 40000;`: a number of a wider type that becomes negative. `0xFFFF` has the width of `int` already, and
 * is a pattern of bits.
 */
function turnedNegative({ lasting, model }: TypedUnit, piece: PieceOfCode): readonly ConstantProblem[] {
  return keptNegatives.get(lasting, piece, () => negativesIn(piece, model));
}

const keptNegatives = new KeptResults<PieceOfCode, readonly ConstantProblem[]>();

function negativesIn(piece: PieceOfCode, model: DataModel): readonly ConstantProblem[] {
  const found: ConstantProblem[] = [];
  const evaluated = evaluator(model);
  walkPiece(piece, {
    expression(expression) {
      if (expression.kind !== "convert" || expression.reason === "explicit") return true;
      const { operand, type } = expression;
      if (type.kind !== "integer" || !type.signed || type.bits <= 8) return true;
      if (operand.type.kind !== "integer" || operand.type.bits <= type.bits) return true;
      const { value, spoilt } = evaluated(operand);
      if (value.kind !== "integer" || spoilt) return true;
      const half = 1n << BigInt(type.bits - 1);
      if (value.value < half || value.value >= 2n * half) return true;
      found.push({ kind: "conversion", expression, meant: value.value, got: value.value - 2n * half, type });
      return true;
    },
  });
  return found;
}
