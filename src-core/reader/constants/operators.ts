import { roundTo } from "../typed/literals.ts";
import type { ArithmeticOperator, TypedExpression } from "../typed/nodes.ts";
import { fits, integerTypeOf } from "../types/conversions.ts";
import type { FloatingType, IntegerType } from "../types/types.ts";
import { evaluateIn, type Run } from "./evaluate.ts";
import { plain } from "./expressions.ts";
import { compute, holds } from "./integer-operators.ts";
import type { Evaluation } from "./problems.ts";
import { type IntegerValue, integerValue, sameBase, truth, unknown, type Value, wrap } from "./value.ts";

type Unary = Extract<TypedExpression, { kind: "negate" | "plus" | "complement" | "not" }>;
type Arithmetic = Extract<TypedExpression, { kind: "arithmetic" }>;
type Compare = Extract<TypedExpression, { kind: "compare" }>;

export function evaluateUnary(run: Run, expression: Unary): Evaluation<Value> {
  const operand = evaluateIn(run, expression.operand);
  const { value } = operand;
  if (value.kind === "unknown") return plain(value, operand.spoilt);
  if (expression.kind === "not") {
    const type = integerTypeOf(expression.type);
    const isTrue = truth(value);
    if (type === undefined || isTrue === undefined) return plain(unknown("no truth value"));
    return plain(integerValue(isTrue ? 0n : 1n, type), operand.spoilt);
  }
  if (expression.kind === "plus") return { ...operand, problem: undefined };
  if (value.kind === "floating" && expression.kind === "negate") {
    return plain({ ...value, value: -value.value }, operand.spoilt);
  }
  if (value.kind !== "integer") return plain(unknown("not a number"));
  if (expression.kind === "complement") return plain(integerValue(~value.value, value.type), operand.spoilt);
  return negated(expression, value, operand.spoilt);
}

function negated(expression: TypedExpression, value: IntegerValue, spoilt: boolean): Evaluation<Value> {
  const meant = -value.value;
  const result = integerValue(meant, value.type);
  if (!value.type.signed || fits(meant, value.type) || spoilt) return plain(result, spoilt);
  const problem = { kind: "overflow", expression, meant, got: result.value, type: value.type } as const;
  return { value: result, problem, spoilt: true, exact: undefined };
}

export function evaluateArithmetic(run: Run, expression: Arithmetic): Evaluation<Value> {
  const left = evaluateIn(run, expression.left);
  const right = evaluateIn(run, expression.right);
  const spoilt = left.spoilt || right.spoilt;
  if (left.value.kind === "unknown") return plain(left.value, spoilt);
  if (right.value.kind === "unknown") return plain(right.value, spoilt);
  if (left.value.kind === "integer" && right.value.kind === "integer") {
    return integerArithmetic(expression, left, right, left.value, right.value);
  }
  if (left.value.kind === "floating" && right.value.kind === "floating") {
    const { type } = left.value;
    return plain(floatingArithmetic(expression.operator, left.value.value, right.value.value, type), spoilt);
  }
  return plain(unknown("operands of these types have no known result"), spoilt);
}

function floatingArithmetic(
  operator: ArithmeticOperator,
  left: number,
  right: number,
  type: FloatingType,
): Value {
  const of = (value: number): Value => ({ kind: "floating", value: roundTo(value, type), type });
  switch (operator) {
    case "+":
      return of(left + right);
    case "-":
      return of(left - right);
    case "*":
      return of(left * right);
    case "/":
      return of(left / right);
    default:
      return unknown(`floating values have no \`${operator}\``);
  }
}

function integerArithmetic(
  expression: Arithmetic,
  left: Evaluation<Value>,
  right: Evaluation<Value>,
  a: IntegerValue,
  b: IntegerValue,
): Evaluation<Value> {
  const { type } = a;
  const { got, meant, problem: kind } = compute(expression.operator, a.value, b.value, type);
  const spoilt = left.spoilt || right.spoilt;
  const value = got === undefined ? unknown(reasonOf(kind)) : integerValue(got, type);
  const isNew = kind !== undefined && !spoilt;
  const problem = isNew ? { kind, expression, meant, got, type } : undefined;
  return {
    value,
    problem,
    spoilt: spoilt || kind !== undefined,
    exact:
      kind === undefined && got !== undefined
        ? exactOf(expression.operator, left, right, a, b, type, got)
        : undefined,
  };
}

function reasonOf(kind: string | undefined): string {
  return kind === "division" ? "division by zero" : "a shift by a negative number";
}

/** Carries on the value that a sign bit hides: `1 << 15` means 32768, whatever a 16-bit `int` makes of it. */
function exactOf(
  operator: ArithmeticOperator,
  left: Evaluation<Value>,
  right: Evaluation<Value>,
  a: IntegerValue,
  b: IntegerValue,
  type: IntegerType,
  got: bigint,
): bigint | undefined {
  if (!type.signed) return undefined;
  const isShift = operator === "<<" && a.value >= 0n;
  if (!isShift && left.exact === undefined && right.exact === undefined) return undefined;
  if (operator === "/" || operator === "%" || operator === ">>") return undefined;
  const wide: IntegerType = { ...type, bits: type.bits * 4 };
  const { got: meant } = compute(operator, left.exact ?? a.value, right.exact ?? b.value, wide);
  return meant === undefined || meant === got || wrap(meant, type) !== got ? undefined : meant;
}

export function evaluateCompare(run: Run, expression: Compare): Evaluation<Value> {
  const left = evaluateIn(run, expression.left);
  const right = evaluateIn(run, expression.right);
  const spoilt = left.spoilt || right.spoilt;
  const type = integerTypeOf(expression.type);
  if (left.value.kind === "unknown") return plain(left.value, spoilt);
  if (right.value.kind === "unknown") return plain(right.value, spoilt);
  const answer = compareValues(expression, left.value, right.value);
  if (answer === undefined || type === undefined)
    return plain(unknown("not comparable before linking"), spoilt);
  return plain(integerValue(answer ? 1n : 0n, type), spoilt);
}

function compareValues(expression: Compare, left: Value, right: Value): boolean | undefined {
  const { operator } = expression;
  if (left.kind === "integer" && right.kind === "integer") return holds(operator, left.value, right.value);
  if (left.kind === "floating" && right.kind === "floating") return holds(operator, left.value, right.value);
  if (left.kind !== "address" || right.kind !== "address") return undefined;
  if (sameBase(left.base, right.base)) return holds(operator, left.offset, right.offset);
  const isNull = (value: Value) => truth(value) === false;
  if (!isNull(left) && !isNull(right)) return undefined;
  return operator === "!=" ? true : operator === "==" ? false : undefined;
}
