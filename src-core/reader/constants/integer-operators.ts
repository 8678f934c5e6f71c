import type { ArithmeticOperator, ComparisonOperator } from "../typed/nodes.ts";
import { fits } from "../types/conversions.ts";
import type { IntegerType } from "../types/types.ts";
import type { ConstantProblemKind } from "./problems.ts";
import { wrap } from "./value.ts";

/** What an operator gives on the target, beside what it gives with unlimited precision. */
export interface Computed {
  /** Undefined where the standard and the target leave it open. */
  readonly got: bigint | undefined;
  readonly meant: bigint | undefined;
  readonly problem: ConstantProblemKind | undefined;
}

/** The largest shift whose result with unlimited precision is worth telling. */
const longestShift = 256n;

function shifted(operator: "<<" | ">>", left: bigint, right: bigint, type: IntegerType): Computed {
  if (right < 0n) return { got: undefined, meant: undefined, problem: "shift" };
  const tooFar = right >= BigInt(type.bits);
  if (operator === ">>") {
    if (tooFar) return { got: left < 0n ? -1n : 0n, meant: left < 0n ? -1n : 0n, problem: "shift" };
    return { got: left >> right, meant: left >> right, problem: undefined };
  }
  const meant = right > longestShift ? undefined : left << right;
  if (tooFar) return { got: 0n, meant, problem: "shift" };
  const got = wrap(left << right, type);
  const loses = type.signed && left >= 0n && (left << right) >> BigInt(type.bits) !== 0n;
  return { got, meant, problem: loses ? "overflow" : undefined };
}

function divided(operator: "/" | "%", left: bigint, right: bigint, type: IntegerType): Computed {
  if (right === 0n) return { got: undefined, meant: undefined, problem: "division" };
  const meant = operator === "/" ? left / right : left % right;
  const got = wrap(meant, type);
  return { got, meant, problem: got === meant ? undefined : "overflow" };
}

/** `left op right` in a type that both operands already have (the left one for shifts). C11 6.5.5 to 6.5.12. */
export function compute(
  operator: ArithmeticOperator,
  left: bigint,
  right: bigint,
  type: IntegerType,
): Computed {
  switch (operator) {
    case "<<":
    case ">>":
      return shifted(operator, left, right, type);
    case "/":
    case "%":
      return divided(operator, left, right, type);
    case "&":
    case "^":
    case "|": {
      const bits = operator === "&" ? left & right : operator === "^" ? left ^ right : left | right;
      return { got: wrap(bits, type), meant: bits, problem: undefined };
    }
    case "+":
    case "-":
    case "*": {
      const meant = operator === "+" ? left + right : operator === "-" ? left - right : left * right;
      if (fits(meant, type)) return { got: meant, meant, problem: undefined };
      const problem = type.signed ? "overflow" : operator === "-" ? undefined : "wrap";
      return { got: wrap(meant, type), meant, problem };
    }
  }
}

/** The comparison of two numbers of one type (C11 6.5.8, 6.5.9). */
export function holds<Operand extends bigint | number>(
  operator: ComparisonOperator,
  left: Operand,
  right: Operand,
): boolean {
  switch (operator) {
    case "<":
      return left < right;
    case ">":
      return left > right;
    case "<=":
      return left <= right;
    case ">=":
      return left >= right;
    case "==":
      return left === right;
    case "!=":
      return left !== right;
  }
}
