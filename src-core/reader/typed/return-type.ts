import type { Type } from "../types/types.ts";
import type { FunctionSymbol } from "./nodes.ts";

/** What a function returns; a body is read first where only it can say (`auto f() {...}`). */
export function returnType(symbol: FunctionSymbol): Type {
  const { returns } = symbol.type;
  if (returns.kind === "unknown" && returns.name === "auto" && symbol.definition !== undefined) {
    return symbol.type.returns;
  }
  return returns;
}
