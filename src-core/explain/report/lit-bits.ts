import { evaluate } from "../../reader/constants/evaluate.ts";
import { allBits, bitsOfType, bitsThrough, possibleBits } from "../../reader/constants/possible-bits.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { DataModel } from "../../reader/types/types.ts";

/** Where the bits of `part`, somewhere in `whole`, come out in it; 0 where they are lost or `part` is not in it. */
export function bitsOfPart(whole: TypedExpression, part: TypedExpression, model: DataModel): number {
  if (whole === part) return possibleBits(part, model);
  switch (whole.kind) {
    case "convert":
      return bitsOfType(whole.type) & bitsOfPart(whole.operand, part, model);
    case "conditional":
      return bitsOfPart(whole.then, part, model) | bitsOfPart(whole.otherwise, part, model);
    case "arithmetic": {
      const left = bitsOfPart(whole.left, part, model);
      const right = bitsOfPart(whole.right, part, model);
      if (left === 0 && right === 0) return 0;
      // What a product does to bits is not followed.
      if (whole.operator === "*") return allBits;
      // The other operand of a mask keeps what it keeps; that of an `|` adds nothing to the part.
      if (whole.operator !== "&") return bitsThrough(whole, left, right, model);
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
  wanted: number = allBits,
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

export function constantOf(expression: TypedExpression, model: DataModel): number | undefined {
  const value = evaluate(expression, model);
  return value.kind === "integer" ? Number(BigInt.asUintN(32, value.value)) : undefined;
}
