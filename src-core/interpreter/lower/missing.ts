import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { FunctionScope } from "./scope.ts";

/** JavaScript for a function that is called here; one that nobody defines stops the run here. */
export function functionCode(scope: FunctionScope, symbol: FunctionSymbol, at: At): string {
  const { linkage } = scope;
  if (linkage.isKnown(symbol)) return `F[${linkage.functionNumber(symbol)}]`;
  const text = `\`${symbol.qualifiedName}\`, which is declared and not defined`;
  return `cannot(${linkage.textNumber(text)},${scope.place(at)})`;
}
