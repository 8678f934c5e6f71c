import { evaluateFully } from "../../reader/constants/evaluate.ts";
import type { ConstantProblem } from "../../reader/constants/problems.ts";
import type { TypedExpression, TypedUnit } from "../../reader/typed/nodes.ts";
import { expressionsIn, type Part, partsOfInitializer } from "../tree/parts.ts";
import { macrosOf } from "./interrupts-off.ts";

/** A constant whose value on this chip is not the one that was written. */
export interface BrokenConstant {
  readonly problem: ConstantProblem;
}

/** Constants of the firmware that go wrong on its chip, each once; idioms that only look so are left out. */
export function brokenConstants(units: readonly TypedUnit[]): readonly BrokenConstant[] {
  const found: BrokenConstant[] = [];
  const places = new Set<string>();
  for (const unit of units) {
    const halves = new Set<TypedExpression>();
    for (const part of codeOf(unit)) {
      for (const expression of expressionsIn(part)) {
        if (expression.kind === "assign" && isHalfOfRegister(expression.target)) halves.add(expression.value);
        const { problem } = evaluateFully(expression, unit.model);
        if (problem === undefined || !matters(problem) || halves.has(problem.expression)) continue;
        const { first, last } = problem.expression.at;
        const place = `${first.file} ${first.start} ${last.file} ${last.end} ${problem.kind}`;
        if (places.has(place)) continue;
        places.add(place);
        found.push({ problem });
      }
    }
  }
  return found;
}

function* codeOf(unit: TypedUnit): Generator<Part> {
  for (const variable of [...unit.variables, ...unit.locals]) {
    if (variable.storage !== "local") yield* partsOfInitializer(variable.initializer);
  }
  for (const symbol of unit.functions) {
    if (symbol.standIn || symbol.definition === undefined) continue;
    for (const { initializer } of symbol.definition.memberInitializers)
      yield* partsOfInitializer(initializer);
    yield { kind: "statement", statement: symbol.definition.body };
  }
}

/** `UBRR0L = divisor;`: the low byte of a pair takes what fits, the high byte the rest. */
function isHalfOfRegister(target: TypedExpression): boolean {
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
      return losesMoreThanASign(problem);
    case "division":
      return false;
  }
}

/**
 * `-1` for the largest unsigned value and `0xFE` in a `char` are common ways to write a pattern of bits; a value
 * that has more bits than its target, or `40000` in a 16-bit `int`, is not.
 */
function losesMoreThanASign({ meant, type, expression }: ConstantProblem): boolean {
  if (meant === undefined) return false;
  const half = 1n << BigInt(type.bits - 1);
  if (meant < -half || meant >= 2n * half) return true;
  if (!type.signed || type.bits <= 8 || meant < half) return false;
  const source = expression.kind === "convert" ? expression.operand.type : undefined;
  return source?.kind === "integer" && source.bits > type.bits;
}
