import type { FunctionSymbol, TypedExpression } from "../../reader/typed/nodes.ts";

/** One call of a function by name; `arguments` without the object of a member function. */
export interface Call {
  readonly callee: FunctionSymbol;
  readonly arguments: readonly TypedExpression[];
  readonly expression: TypedExpression;
}

/** The call that this expression is, where the function is known by name. */
export function callOf(expression: TypedExpression): Call | undefined {
  if (expression.kind === "method-call") {
    return { callee: expression.method, arguments: expression.arguments, expression };
  }
  if (expression.kind !== "call") return undefined;
  const callee = functionNamedBy(expression.callee);
  return callee && { callee, arguments: expression.arguments, expression };
}

/** The function that an expression names: `f`, `&f`, `*f`, a lambda, with or without casts. */
function functionNamedBy(expression: TypedExpression): FunctionSymbol | undefined {
  switch (expression.kind) {
    case "function":
    case "lambda":
      return expression.function;
    case "convert":
    case "address":
    case "dereference":
      return functionNamedBy(expression.operand);
    default:
      return undefined;
  }
}

/** A call by name, of a function that is declared or of one that is not. */
export interface NamedCall extends Pick<Call, "arguments" | "expression"> {
  readonly name: string;
}

export function namedCallOf(expression: TypedExpression): NamedCall | undefined {
  const call = callOf(expression);
  if (call !== undefined) return { name: call.callee.name, arguments: call.arguments, expression };
  if (expression.kind !== "unresolved" || expression.form !== "call") return undefined;
  return { name: expression.name, arguments: expression.operands, expression };
}
