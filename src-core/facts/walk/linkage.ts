import type { Program } from "../../reader/program/program.ts";
import type { ClassMembers, FunctionDefinition, FunctionSymbol, Variable } from "../../reader/typed/nodes.ts";
import type { Field, RecordDeclaration } from "../../reader/types/types.ts";

/** Which declarations in several units mean the same function or variable, as the walk asks for it. */
export interface Linkage {
  /** The body of a function, in whichever unit it stands; undefined for none and for stand-in headers. */
  definitionOf(symbol: FunctionSymbol): FunctionDefinition | undefined;
  /** The declaration with the body, by which functions are compared; else the symbol itself. */
  definingSymbol(symbol: FunctionSymbol): FunctionSymbol;
  /** The one variable that stands for all declarations of it. */
  canonical(variable: Variable): Variable;
  /** The one member that stands for it in all units that read its class. */
  canonicalField(field: Field): Field;
  membersOf(record: RecordDeclaration): ClassMembers | undefined;
  /** A function of C by its name, also one of a stand-in header. */
  functionNamed(name: string): FunctionSymbol | undefined;
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
  const fields = fieldsByPlace(program);
  return {
    definingSymbol,
    canonicalField: (field) => fields.get(field) ?? field,
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
    functionNamed(name) {
      for (const { typed } of program.units) {
        const symbol = typed.functions.find((each) => each.name === name && each.memberOf === undefined);
        if (symbol !== undefined) return symbol;
      }
      return undefined;
    },
  };
}

/** A class in a header is read once for each unit: members declared at the same place are the same. */
function fieldsByPlace(program: Program): ReadonlyMap<Field, Field> {
  const canonical = new Map<Field, Field>();
  if (program.units.length < 2) return canonical;
  const byPlace = new Map<string, Field>();
  for (const { typed } of program.units) {
    for (const [field, { first }] of typed.fieldPlaces) {
      const place = `${first.file}:${first.start}`;
      const held = byPlace.get(place);
      if (held === undefined) byPlace.set(place, field);
      else canonical.set(field, held);
    }
  }
  return canonical;
}
