import { evaluate } from "../../reader/constants/evaluate.ts";
import { KeptResults } from "../../reader/typed/kept-results.ts";
import type { TypedExpression, TypedUnit } from "../../reader/typed/nodes.ts";
import { operandsOf, type PieceOfCode, piecesOf, walkPiece } from "../../reader/typed/walk.ts";
import type { DataModel } from "../../reader/types/types.ts";
import type { Facts } from "../facts.ts";

/** Whether anything in the program is added to what was there before, other than a constant: movements may be merged so. */
export function addsUp({ program }: Facts): boolean {
  for (const { typed } of program.units) {
    for (const piece of piecesOf(typed)) if (addsUpIn(piece, typed)) return true;
  }
  return false;
}

const kept = new KeptResults<PieceOfCode, boolean>();

function addsUpIn(piece: PieceOfCode, { lasting, model }: TypedUnit): boolean {
  return kept.get(lasting, piece, () => {
    let adds = false;
    walkPiece(piece, {
      expression(expression) {
        adds ||= addsTo(expression) && !isConstant(expression.value, model);
        return !adds;
      },
    });
    return adds;
  });
}

type Adding = Extract<TypedExpression, { kind: "assign" | "compound-assign" }>;

/** `a += b`, `a -= b`, `a = a + b`: by the same variable or member on both sides. */
function addsTo(expression: TypedExpression): expression is Adding {
  if (expression.kind === "compound-assign")
    return expression.operator === "+" || expression.operator === "-";
  if (expression.kind !== "assign") return false;
  const target = nameOf(expression.target);
  return target !== undefined && sums(expression.value, target);
}

/** A sum one side of which is what the name stands for, whatever is made of it before it is stored. */
function sums(value: TypedExpression, target: object): boolean {
  if (value.kind === "arithmetic" && (value.operator === "+" || value.operator === "-")) {
    if (mentions(value, target)) return true;
  }
  return operandsOf(value).some((operand) => sums(operand, target));
}

function mentions(value: TypedExpression, target: object): boolean {
  return nameOf(value) === target || operandsOf(value).some((operand) => mentions(operand, target));
}

function nameOf(expression: TypedExpression): object | undefined {
  switch (expression.kind) {
    case "variable":
      return expression.variable;
    case "member":
      return expression.field;
    case "index":
      return nameOf(expression.array);
    case "convert":
      return nameOf(expression.operand);
    default:
      return undefined;
  }
}

function isConstant(value: TypedExpression, model: DataModel): boolean {
  if (value.kind === "arithmetic") {
    return isConstant(value.left, model) || isConstant(value.right, model);
  }
  return evaluate(value, model).kind !== "unknown";
}
