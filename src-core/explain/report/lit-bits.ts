import { evaluate } from "../../reader/constants/evaluate.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";

/** Bits that nothing says to be 0. */
const every = 0xffffffff;

/** Bits that a value may have as 1, as far as masks and shifts by constants tell: `(dx & 0xC0) >> 6` may have 0x03. */
export function possibleBits(expression: TypedExpression, model: DataModel): number {
  const constant = constantOf(expression, model);
  if (constant !== undefined) return constant;
  switch (expression.kind) {
    case "convert":
      return widthOf(expression) & possibleBits(expression.operand, model);
    case "compare":
    case "logical":
    case "not":
      return 1;
    case "conditional":
      return possibleBits(expression.then, model) | possibleBits(expression.otherwise, model);
    case "arithmetic":
      return through(
        expression,
        model,
        possibleBits(expression.left, model),
        possibleBits(expression.right, model),
      );
    default:
      return widthOf(expression);
  }
}

/** Where the bits of `part`, somewhere in `whole`, come out in it; 0 where they are lost or `part` is not in it. */
export function bitsOfPart(whole: TypedExpression, part: TypedExpression, model: DataModel): number {
  if (whole === part) return possibleBits(part, model);
  switch (whole.kind) {
    case "convert":
      return widthOf(whole) & bitsOfPart(whole.operand, part, model);
    case "conditional":
      return bitsOfPart(whole.then, part, model) | bitsOfPart(whole.otherwise, part, model);
    case "arithmetic": {
      const left = bitsOfPart(whole.left, part, model);
      const right = bitsOfPart(whole.right, part, model);
      if (left === 0 && right === 0) return 0;
      // The other operand of a mask keeps what it keeps; that of an `|` adds nothing to the part.
      if (whole.operator !== "&") return through(whole, model, left, right);
      return left !== 0 ? left & possibleBits(whole.right, model) : right & possibleBits(whole.left, model);
    }
    default:
      return 0;
  }
}

/**
 * Which bits of `part`, read somewhere in `whole`, end up in `wanted` bits of it: for `(b & 0x20) << 3` those of `b`
 * are 0x20. 0 where `part` is not in it.
 */
export function bitsReadOf(
  whole: TypedExpression,
  part: TypedExpression,
  model: DataModel,
  wanted: number = every,
): number {
  if (whole === part) return wanted;
  switch (whole.kind) {
    case "convert":
      return bitsReadOf(whole.operand, part, model, wanted);
    case "conditional":
      return bitsReadOf(whole.then, part, model, wanted) | bitsReadOf(whole.otherwise, part, model, wanted);
    case "compare":
    case "logical":
      return bitsReadOf(whole.left, part, model) | bitsReadOf(whole.right, part, model);
    case "not":
      return bitsReadOf(whole.operand, part, model);
    case "arithmetic": {
      const amount = constantOf(whole.right, model);
      switch (whole.operator) {
        case "&":
          return (
            bitsReadOf(whole.left, part, model, wanted & possibleBits(whole.right, model)) |
            bitsReadOf(whole.right, part, model, wanted & possibleBits(whole.left, model))
          );
        case ">>":
          return amount === undefined ? 0 : bitsReadOf(whole.left, part, model, wanted << amount);
        case "<<":
          return amount === undefined ? 0 : bitsReadOf(whole.left, part, model, wanted >>> amount);
        default:
          return bitsReadOf(whole.left, part, model, wanted) | bitsReadOf(whole.right, part, model, wanted);
      }
    }
    default:
      return 0;
  }
}

/** What an operator makes of the bits of its operands. */
function through(
  { operator, right: amountOf }: Extract<TypedExpression, { kind: "arithmetic" }>,
  model: DataModel,
  left: number,
  right: number,
): number {
  const amount = constantOf(amountOf, model);
  switch (operator) {
    case "&":
      return left & right;
    case "|":
    case "^":
    case "+":
      return left | right;
    case "<<":
      return amount === undefined ? every : left << amount;
    case ">>":
      return amount === undefined ? every : left >>> amount;
    default:
      return every;
  }
}

/** All bits of an unsigned type; a signed value may be negative, and then all bits above are 1. */
function widthOf({ type }: TypedExpression): number {
  if (type.kind === "integer" && type.rank === "bool") return 1;
  if (type.kind !== "integer" || type.signed || type.bits >= 32) return every;
  return 2 ** type.bits - 1;
}

export function constantOf(expression: TypedExpression, model: DataModel): number | undefined {
  const value = evaluate(expression, model);
  return value.kind === "integer" ? Number(BigInt.asUintN(32, value.value)) : undefined;
}
