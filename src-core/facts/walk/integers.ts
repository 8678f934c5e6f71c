import type { ArithmeticOperator } from "../../reader/typed/nodes.ts";
import type { IntegerType } from "../../reader/types/types.ts";

/**
 * Integer arithmetic of the target on plain numbers. Results are wrapped to their type as the target does;
 * undefined where a value does not fit 53 bits or the operation has no value (division by zero).
 */

export function wrap(value: number, type: IntegerType): number | undefined {
  if (type.rank === "bool") return value === 0 ? 0 : 1;
  if (!Number.isSafeInteger(value)) return undefined;
  const { bits, signed } = type;
  if (bits === 32) return signed ? value | 0 : value >>> 0;
  if (bits > 32) return value < 0 && !signed ? undefined : value;
  const low = value & (2 ** bits - 1);
  return signed && low >= 2 ** (bits - 1) ? low - 2 ** bits : low;
}

export function integerArithmetic(
  operator: ArithmeticOperator,
  left: number,
  right: number,
  type: IntegerType,
): number | undefined {
  const plain = plainArithmetic(operator, left, right, type);
  return plain === undefined ? undefined : wrap(plain, type);
}

function plainArithmetic(
  operator: ArithmeticOperator,
  left: number,
  right: number,
  type: IntegerType,
): number | undefined {
  switch (operator) {
    case "+":
      return left + right;
    case "-":
      return left - right;
    case "*":
      return product(left, right, type);
    case "/":
      return right === 0 ? undefined : Math.trunc(left / right);
    case "%":
      return right === 0 ? undefined : left % right;
    case "<<":
      return right < 0 || right >= type.bits ? undefined : product(left, 2 ** right, type);
    case ">>":
      return right < 0 || right >= type.bits ? undefined : Math.floor(left / 2 ** right);
    case "&":
    case "|":
    case "^":
      return bitwise(operator, left, right, type);
  }
}

/** A product of two 32-bit numbers may need more than 53 bits before it is wrapped. */
function product(left: number, right: number, type: IntegerType): number | undefined {
  const plain = left * right;
  if (Number.isSafeInteger(plain)) return plain;
  return type.bits <= 32 ? Math.imul(left, right) : undefined;
}

function bitwise(
  operator: "&" | "|" | "^",
  left: number,
  right: number,
  type: IntegerType,
): number | undefined {
  if (type.bits > 32) {
    const [a, b] = [BigInt(left), BigInt(right)];
    return Number(operator === "&" ? a & b : operator === "|" ? a | b : a ^ b);
  }
  return operator === "&" ? left & right : operator === "|" ? left | right : left ^ right;
}
