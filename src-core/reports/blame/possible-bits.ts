import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";

/** The bits (of the lowest 16) that an expression's value can have set, as far as its own form says; else all. */
export function possibleBits(expression: TypedExpression, model: DataModel): number {
  const all = 0xffff;
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
    case "arithmetic": {
      const left = possibleBits(expression.left, model);
      const right = possibleBits(expression.right, model);
      const by = evaluate(expression.right, model);
      const count = by.kind === "integer" ? Number(by.value) : undefined;
      switch (expression.operator) {
        case "&":
          return left & right;
        case "|":
        case "^":
        case "+":
          return left | right;
        case "<<":
          return count === undefined ? all : (left << count) & all;
        case ">>":
          return count === undefined ? all : left === all ? all : left >> count;
        case "*":
          return left <= 1 ? right : right <= 1 ? left : all;
        default:
          return all;
      }
    }
    default: {
      const { type } = expression;
      if (type.kind !== "integer") return all;
      if (type.rank === "bool") return 1;
      return type.signed ? all : maskOf(type.bits);
    }
  }
}

function maskOf(bits: number): number {
  return bits >= 16 ? 0xffff : 2 ** bits - 1;
}
