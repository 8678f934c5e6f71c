import type { ArithmeticOperator, TypedExpression } from "../../../reader/typed/nodes.ts";
import type { Type } from "../../../reader/types/types.ts";
import { cost } from "./costs.ts";
import { isFloating, isSigned, type Widths } from "./widths.ts";

/** An operation on operands that are in registers, of whose result the low bytes are wanted. */
export function operationCycles(
  operator: ArithmeticOperator,
  type: Type,
  wanted: number,
  left: TypedExpression,
  right: TypedExpression,
  widths: Widths,
): number {
  const constant = widths.constant(right);
  if (isFloating(type)) return floatCycles(operator);
  switch (operator) {
    case "+":
    case "-":
      return wanted * cost.operationByte;
    case "&":
      return bytewise(constant ?? widths.constant(left), wanted, { keeps: 0xffn, clears: 0n });
    case "|":
      return bytewise(constant ?? widths.constant(left), wanted, { keeps: 0n, clears: undefined });
    case "^":
      // There is no immediate form but COM.
      return bytewise(constant, wanted, { keeps: 0n, clears: undefined }) * (constant === undefined ? 1 : 2);
    case "<<":
    case ">>": {
      const whole = widths.bytesOf(type);
      if (constant === undefined) return cost.shiftLoop;
      const known = Math.min(whole, widths.bytes(left));
      const bytes = operator === "<<" ? wanted : Math.min(known, wanted + Math.ceil(Number(constant) / 8));
      return shiftCycles(Number(constant), Math.max(1, bytes));
    }
    case "*":
      return productCycles(wanted, left, right, widths);
    case "/":
    case "%":
      return quotientCycles(operator, type, wanted, left, right, widths);
  }
}

function floatCycles(operator: ArithmeticOperator): number {
  return operator === "/" ? cost.floatQuotient : operator === "*" ? cost.floatProduct : cost.floatSum;
}

/** Bytes of a constant that keep the other operand as it is, or clear it, take no instruction. */
function bytewise(
  constant: bigint | undefined,
  wanted: number,
  { keeps, clears }: { readonly keeps: bigint; readonly clears: bigint | undefined },
): number {
  if (constant === undefined) return wanted * cost.operationByte;
  let cycles = 0;
  for (let at = 0; at < wanted; at += 1) {
    const byte = (constant >> BigInt(8 * at)) & 0xffn;
    if (byte !== keeps && byte !== clears) cycles += cost.operationByte;
  }
  return cycles;
}

/** By a constant: whole bytes are moved, SWAP does four bits of a byte, what takes too many words is a loop. */
export function shiftCycles(by: number, bytes: number): number {
  const moved = Math.floor(by / 8);
  const rest = by % 8;
  const left = Math.max(1, bytes - moved);
  const moves = moved === 0 ? 0 : left * cost.operationByte;
  if (rest === 0) return moves;
  if (left === 1) return moves + (rest === 7 ? 3 : rest >= 4 ? rest - 2 : rest);
  if (left === 2 && rest === 7) return moves + 5;
  // A loop is LDI, DEC, BRNE and the shift itself: it is taken where it is shorter.
  if (rest * left <= left + 3) return moves + rest * left;
  return moves + rest * (left + cost.shiftTurn);
}

function productCycles(
  wanted: number,
  left: TypedExpression,
  right: TypedExpression,
  widths: Widths,
): number {
  const constant = widths.constant(right) ?? widths.constant(left);
  if (constant !== undefined && constant > 0n && (constant & (constant - 1n)) === 0n)
    return shiftCycles(constant.toString(2).length - 1, wanted);
  const factors = Math.max(sourceBytes(left, widths), sourceBytes(right, widths));
  if (wanted === 1 || factors === 1) return cost.product8 + Math.max(0, wanted - 2);
  if (wanted === 2) return cost.product16;
  return factors <= 2 ? cost.productMixed : cost.product32;
}

/** Bytes before it was widened: with its sign, too, the factors of a product. */
function sourceBytes(expression: TypedExpression, widths: Widths): number {
  const known = widths.bytes(expression);
  return expression.kind === "convert" ? Math.min(known, sourceBytes(expression.operand, widths)) : known;
}

function quotientCycles(
  operator: "/" | "%",
  type: Type,
  wanted: number,
  left: TypedExpression,
  right: TypedExpression,
  widths: Widths,
): number {
  const divisor = widths.constant(right);
  const whole = widths.bytesOf(type);
  const isNegative = isSigned(type) && widths.bits(left) === whole * 8;
  if (divisor !== undefined && divisor > 0n && (divisor & (divisor - 1n)) === 0n) {
    const bytes = widths.bytes(left);
    // A negative dividend is first made to round towards zero.
    const rounding = isNegative ? 2 + bytes : 0;
    const by = divisor.toString(2).length - 1;
    return rounding + (operator === "/" ? shiftCycles(by, bytes) : Math.min(wanted, bytes));
  }
  const bytes = Math.max(widths.bytes(left), widths.bytes(right));
  const plain = bytes <= 1 ? cost.quotient8 : bytes <= 2 ? cost.quotient16 : cost.quotient32;
  return plain + (isNegative ? cost.quotientSign : 0) + (divisor === undefined ? 0 : bytes);
}
