import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { lowerBody } from "./functions.ts";
import { addressOf } from "./places.ts";
import { CannotLower, FunctionScope } from "./scope.ts";
import { lowerValue, shapeAt } from "./values.ts";

/**
 * A lambda: a function inside the one that holds it, so that what it captures by reference is simply seen; copies are
 * parameters of a function around it. Its value is a pointer to a function made when it is run.
 */
export function lowerLambda(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "lambda" }>,
): string {
  const { definition } = expression.function;
  if (expression.copiesImplicitly) throw new CannotLower("a lambda that copies what it names", expression.at);
  if (definition === undefined) throw new CannotLower("a lambda without a body", expression.at);
  const inside = new FunctionScope(scope.linkage, scope.inMemory, `${scope.prefix}n`);
  for (const [variable, name] of scope.names) inside.names.set(variable, name);
  for (const [variable, address] of scope.addresses) inside.addresses.set(variable, address);
  const names: string[] = [];
  const values: string[] = [];
  for (const { variable, source, reference } of expression.captures) {
    if (reference && source.kind === "variable" && source.variable === variable) continue;
    const name = `${scope.prefix}c${names.length}`;
    names.push(name);
    if (reference || shapeAt(scope, source).kind === "object") {
      if (!reference) throw new CannotLower("a lambda that holds a copy of an object", expression.at);
      values.push(addressOf(scope, source));
    } else values.push(lowerValue(scope, source));
    inside.names.set(variable, name);
  }
  const body = lowerBody(inside, expression.function, definition);
  return `lambda(((${names.join(",")})=>${body})(${values.join(",")}))`;
}
