import { cleanUpOf } from "../../reader/typed/clean-up.ts";
import type { Variable } from "../../reader/typed/nodes.ts";
import { functionCode } from "./missing.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";

/** JavaScript expressions that end a variable at an address as its attribute says. */
export function cleanupSteps(scope: FunctionScope, variable: Variable, address: string): string[] {
  const name = cleanUpOf(variable);
  if (name === undefined) return [];
  const symbol = scope.linkage.functionNamed(name);
  if (symbol === undefined) throw new CannotLower(`the clean-up by \`${name}\``, variable.at);
  return [`${functionCode(scope, symbol, variable.at)}(${address})`];
}
