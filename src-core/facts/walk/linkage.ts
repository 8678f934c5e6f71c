import type {
  ClassMembers,
  FunctionDefinition,
  FunctionSymbol,
  TypedUnit,
  Variable,
} from "../../reader/typed/nodes.ts";
import type { RecordDeclaration } from "../../reader/types/types.ts";

/** Which declarations in several units mean the same function or variable. */
export interface Linkage {
  /** The body of a function, in whichever unit it stands; undefined for none and for stand-in headers. */
  definitionOf(symbol: FunctionSymbol): FunctionDefinition | undefined;
  /** The declaration with the body, for comparing functions of several units; else the symbol itself. */
  definingSymbol(symbol: FunctionSymbol): FunctionSymbol;
  /** The one variable that stands for all declarations of it. */
  canonical(variable: Variable): Variable;
  membersOf(record: RecordDeclaration): ClassMembers | undefined;
}

export function linkUnits(units: readonly TypedUnit[]): Linkage {
  const functions = new Map<string, FunctionSymbol>();
  const variables = new Map<string, Variable>();
  for (const unit of units) {
    for (const symbol of unit.functions) {
      const { linkageName } = symbol;
      if (linkageName === undefined || symbol.standIn || functions.has(linkageName)) continue;
      if (isDefined(symbol)) functions.set(linkageName, symbol);
    }
    for (const variable of unit.variables) {
      const { linkageName } = variable;
      if (linkageName === undefined) continue;
      const held = variables.get(linkageName);
      if (held === undefined || (held.initializer === undefined && variable.initializer !== undefined)) {
        variables.set(linkageName, variable);
      }
    }
  }
  const definingSymbol = (symbol: FunctionSymbol): FunctionSymbol => {
    if (symbol.standIn || symbol.linkageName === undefined) return symbol;
    return functions.get(symbol.linkageName) ?? symbol;
  };
  return {
    definingSymbol,
    definitionOf: (symbol) => (symbol.standIn ? undefined : definingSymbol(symbol).definition),
    canonical(variable) {
      const { linkageName } = variable;
      return linkageName === undefined ? variable : (variables.get(linkageName) ?? variable);
    },
    membersOf(record) {
      for (const unit of units) {
        const members = unit.classes.get(record);
        if (members !== undefined) return members;
      }
      return undefined;
    },
  };
}

function isDefined(symbol: FunctionSymbol): boolean {
  return symbol.definition !== undefined;
}
