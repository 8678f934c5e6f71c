import type { Type } from "../types/types.ts";
import { conditionOfClass } from "./class-operators.ts";
import type { Context } from "./context.ts";
import { decayed } from "./make.ts";
import type { TypedExpression } from "./nodes.ts";

/** A condition: a scalar compared with zero; an object of a class is first converted to `bool`. */
export function condition(context: Context, expression: TypedExpression): TypedExpression {
  if (expression.type.kind === "record") return conditionOfClass(context, expression);
  return decayed(expression);
}

/** The type of comparisons, `!`, `&&`, `||`: `int` in C (C11 6.5.8p6), `bool` in C++. */
export function truthType(context: Context): Type {
  return context.unit.language === "c" ? context.unit.types.int : context.unit.types.bool;
}
