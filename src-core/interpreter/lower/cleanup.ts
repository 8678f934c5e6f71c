import type { Variable } from "../../reader/typed/nodes.ts";
import { functionCode } from "./missing.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";

/** The function that is called with a variable's address when it ends: `__attribute__((cleanup(f)))` of gcc. */
export function cleanupOf({ attributes }: Variable): string | undefined {
  return attributes.find(({ name }) => name === "cleanup" || name === "__cleanup__")?.arguments[0];
}

/** JavaScript expressions that end a variable at an address as its attribute says. */
export function cleanupSteps(scope: FunctionScope, variable: Variable, address: string): string[] {
  const name = cleanupOf(variable);
  if (name === undefined) return [];
  const symbol = scope.linkage.functionNamed(name);
  if (symbol === undefined) throw new CannotLower(`the clean-up by \`${name}\``, variable.at);
  return [`${functionCode(scope, symbol, variable.at)}(${address})`];
}
