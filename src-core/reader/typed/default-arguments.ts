import { unknownType } from "./make.ts";
import type { FunctionSymbol, TypedExpression } from "./nodes.ts";

/** What the parameters from this one on start with where a call says nothing, as far as they have a default. */
export function defaultArguments({ type, defaults }: FunctionSymbol, from: number): TypedExpression[] {
  const found: TypedExpression[] = [];
  for (let index = from; index < type.parameters.length; index += 1) {
    const value = defaults[index]?.();
    if (value === undefined) break;
    found.push(
      value.kind === "value"
        ? value.value
        : {
            kind: "construct",
            at: value.at,
            type: type.parameters[index] ?? unknownType,
            lvalue: false,
            initializer: value,
          },
    );
  }
  return found;
}

/** Parameters that a call has to give. */
export function requiredArguments({ type, defaults }: FunctionSymbol): number {
  let required = type.parameters.length;
  while (required > 0 && defaults[required - 1] !== undefined) required -= 1;
  return required;
}
