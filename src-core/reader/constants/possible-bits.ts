import type { TypedExpression } from "../typed/nodes.ts";
import type { DataModel, Type } from "../types/types.ts";
import { evaluate } from "./evaluate.ts";

/** The lowest 16 bits, as many as are told of a value. */
export const allBits = 0xffff;

/** The bits (of the lowest 16) that an expression's value can have set, as far as its own form says; else all. */
export function possibleBits(expression: TypedExpression, model: DataModel): number {
  const constant = evaluate(expression, model);
  if (constant.kind === "integer") return Number(BigInt.asUintN(16, constant.value));
  switch (expression.kind) {
    case "convert": {
      const inner = possibleBits(expression.operand, model);
      const { type } = expression;
      if (type.kind !== "integer") return inner;
      return type.rank === "bool" ? 1 : inner & maskOf(type.bits);
    }
    case "compare":
    case "logical":
    case "not":
      return 1;
    case "conditional":
      return possibleBits(expression.then, model) | possibleBits(expression.otherwise, model);
    case "arithmetic":
      return bitsThrough(
        expression,
        possibleBits(expression.left, model),
        possibleBits(expression.right, model),
        model,
      );
    default:
      return bitsOfType(expression.type);
  }
}

/** What an operator makes of the bits of its operands. */
export function bitsThrough(
  { operator, right: amount }: Extract<TypedExpression, { kind: "arithmetic" }>,
  left: number,
  right: number,
  model: DataModel,
): number {
  switch (operator) {
    case "&":
      return left & right;
    case "|":
    case "^":
    case "+":
      return left | right;
    case "<<": {
      const count = countOf(amount, model);
      return count === undefined ? allBits : (left << count) & allBits;
    }
    case ">>": {
      const count = countOf(amount, model);
      return count === undefined || left === allBits ? allBits : left >> count;
    }
    case "*":
      return left <= 1 ? right : right <= 1 ? left : allBits;
    default:
      return allBits;
  }
}

/** All bits of an unsigned type; a signed value may be negative, and then all bits above are 1. */
export function bitsOfType(type: Type): number {
  if (type.kind !== "integer") return allBits;
  if (type.rank === "bool") return 1;
  return type.signed ? allBits : maskOf(type.bits);
}

function countOf(expression: TypedExpression, model: DataModel): number | undefined {
  const value = evaluate(expression, model);
  return value.kind === "integer" ? Number(value.value) : undefined;
}

function maskOf(bits: number): number {
  return bits >= 16 ? allBits : 2 ** bits - 1;
}
