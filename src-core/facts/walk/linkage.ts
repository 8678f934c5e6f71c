import type { Program } from "../../reader/program/program.ts";
import type { ClassMembers, FunctionDefinition, FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";

/** Which declarations in several units mean the same function or variable, as the walk asks for it. */
export interface Linkage {
  /** The body of a function, in whichever unit it stands; undefined for none and for stand-in headers. */
  definitionOf(symbol: FunctionSymbol): FunctionDefinition | undefined;
  /** The declaration with the body, by which functions are compared; else the symbol itself. */
  definingSymbol(symbol: FunctionSymbol): FunctionSymbol;
  /** The one variable that stands for all declarations of it. */
  canonical(variable: Variable): Variable;
  membersOf(record: RecordDeclaration): ClassMembers | undefined;
}

export function linkageOf(program: Program): Linkage {
  const defining = new Map<FunctionSymbol, FunctionSymbol>();
  const definingSymbol = (symbol: FunctionSymbol): FunctionSymbol => {
    let found = defining.get(symbol);
    if (found === undefined) {
      found = symbol.standIn ? symbol : (program.definitionOf(symbol) ?? symbol);
      defining.set(symbol, found);
    }
    return found;
  };
  return {
    definingSymbol,
    definitionOf: (symbol) => (symbol.standIn ? undefined : definingSymbol(symbol).definition),
    canonical: (variable) =>
      variable.linkageName === undefined ? variable : program.definingVariable(variable),
    membersOf(record) {
      for (const { typed } of program.units) {
        const members = typed.classes.get(record);
        if (members !== undefined) return members;
      }
      return undefined;
    },
  };
}
