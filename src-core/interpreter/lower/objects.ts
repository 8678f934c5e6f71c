import type { TypedExpression } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";
import { callInto } from "./calls.ts";
import { copySteps, isPlain, type Source } from "./copies.ts";
import { initialized } from "./initializers.ts";
import { lambdaAt } from "./lambdas.ts";
import { addressOf } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { stored } from "./shape.ts";
import { condition, lowerValue, shapeAt } from "./values.ts";

/**
 * JavaScript that makes an object at an address from an expression of its class; its value is the address. What the
 * expression makes is made there at once, and no copy of it, as avr-gcc does (C++11 12.8p31).
 */
export function objectAt(scope: FunctionScope, to: string, expression: TypedExpression): string {
  // In C a compound literal is an lvalue (C11 6.5.2.5p4).
  if (expression.lvalue && expression.kind !== "construct")
    return copied(scope, to, expression, expression.xvalue === true ? "ends" : "stays");
  switch (expression.kind) {
    case "call":
    case "method-call":
      return callInto(scope, expression, to);
    case "construct":
      return `(${[...initialized(scope, to, expression.type, expression.initializer, "zeroed"), to].join(",")})`;
    case "conditional": {
      const { then, otherwise } = expression;
      return `(${condition(scope, expression.condition)}?${objectAt(scope, to, then)}:${objectAt(scope, to, otherwise)})`;
    }
    case "comma":
      return `(${lowerValue(scope, expression.left)},${objectAt(scope, to, expression.right)})`;
    case "convert":
      if (sameRecord(expression, expression.operand)) return objectAt(scope, to, expression.operand);
      return copied(scope, to, expression, "ends");
    case "lambda":
      return lambdaAt(scope, to, expression);
    default:
      break;
  }
  if (!isPlain(scope, expression.type)) throw new CannotLower("an object made like this", expression.at);
  return stored(shapeAt(scope, expression), to, lowerValue(scope, expression), scope.place(expression.at));
}

/**
 * The same where avr-gcc does make a copy of what a call returns: of objects on the heap and of bases.
 */
export function objectFromCopy(scope: FunctionScope, to: string, expression: TypedExpression): string {
  const isCall = expression.kind === "call" || expression.kind === "method-call";
  return isCall && !expression.lvalue && !isPlain(scope, expression.type)
    ? copied(scope, to, expression, "ends")
    : objectAt(scope, to, expression);
}

/** A copy of an object that has an address, or of a temporary that is given one. */
export function copied(scope: FunctionScope, to: string, from: TypedExpression, source: Source): string {
  const held = scope.temporary();
  const steps = copySteps(scope, to, held, from.type, source, from.at);
  return `(${[`${held}=${addressOf(scope, from)}`, ...steps, to].join(",")})`;
}

function sameRecord({ type }: TypedExpression, operand: TypedExpression): boolean {
  return recordOf(type) !== undefined && recordOf(type) === recordOf(operand.type);
}

function recordOf(type: TypedExpression["type"]): RecordDeclaration | undefined {
  return type.kind === "record" ? type.record : undefined;
}
