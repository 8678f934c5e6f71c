import type { TypedExpression } from "./nodes.ts";

/** Whether an expression is a variable or a member of this name, through a pointer or not. */
export function isCalled(expression: TypedExpression, name: string): boolean {
  switch (expression.kind) {
    case "variable":
      return expression.variable.name === name;
    case "member":
      return expression.field.name === name;
    case "dereference":
    case "convert":
      return isCalled(expression.operand, name);
    default:
      return false;
  }
}
