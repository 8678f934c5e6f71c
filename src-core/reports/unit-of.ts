import type { Program } from "../reader/program/program.ts";
import type { FunctionSymbol, TypedUnit } from "../reader/typed/nodes.ts";

/** The unit that a function is declared in as this symbol. */
export function unitOf(program: Program, symbol: FunctionSymbol): TypedUnit | undefined {
  return program.units.find(({ typed }) => typed.functions.includes(symbol))?.typed;
}
