import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import type { FunctionScope } from "./scope.ts";

/** JavaScript for a function that is called here; one that nobody defines stops the run here. */
export function functionCode(scope: FunctionScope, symbol: FunctionSymbol, at: At): string {
  const { linkage } = scope;
  switch (linkage.origin(symbol)) {
    case "program":
      return `F[${linkage.functionNumber(symbol)}]`;
    case "outside":
      // A library function may have to stop, and is then asked for the place.
      return `(C[2]=${scope.place(at)},F[${linkage.functionNumber(symbol)}])`;
    case undefined:
      break;
  }
  const text = `\`${symbol.qualifiedName}\`, which is declared and not defined`;
  return `cannot(${linkage.textNumber(text)},${scope.place(at)})`;
}
