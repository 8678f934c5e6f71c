import { evaluate } from "../../reader/constants/evaluate.ts";
import type { Program } from "../../reader/program/program.ts";
import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { operandsOf, walkUnit } from "../../reader/typed/walk.ts";
import type { Facts } from "../facts.ts";

const known = new WeakMap<Facts, boolean>();

/** Whether anything in the program is added to what was there before, other than a constant: movements may be merged so. */
export function addsUp(facts: Facts): boolean {
  let found = known.get(facts);
  if (found === undefined) {
    found = facts.program.units.some(({ typed }) => {
      let adds = false;
      walkUnit(typed, {
        expression(expression) {
          adds ||= addsTo(expression) && !isConstant(expression.value, facts.program);
          return !adds;
        },
      });
      return adds;
    });
    known.set(facts, found);
  }
  return found;
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

function isConstant(value: TypedExpression, program: Program): boolean {
  if (value.kind === "arithmetic") {
    return isConstant(value.left, program) || isConstant(value.right, program);
  }
  return evaluate(value, program.model).kind !== "unknown";
}
