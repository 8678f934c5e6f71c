import { type MacroDefinition, type Preprocessed, type Token, visibleRange } from "../../reader/tokens.ts";
import type { At, Enumerator, FunctionSymbol, TypedUnit, Variable } from "../../reader/typed/nodes.ts";
import type { Field } from "../../reader/types/types.ts";

/** What a note can belong to. Something in a header is a target of its own in every unit that includes it. */
export type Target =
  | { readonly kind: "macro"; readonly name: string; readonly macro: MacroDefinition }
  | { readonly kind: "variable"; readonly name: string; readonly variable: Variable }
  | { readonly kind: "enumerator"; readonly name: string; readonly enumerator: Enumerator }
  | { readonly kind: "field"; readonly name: string; readonly field: Field }
  | { readonly kind: "function"; readonly name: string; readonly function: FunctionSymbol };

/** A unit as read: what notes are attached to. */
export interface ReadUnit {
  readonly preprocessed: Preprocessed;
  readonly typed: TypedUnit;
}

/** A declaration and where it stands in its file. */
export interface Declared {
  readonly target: Target;
  readonly unit: ReadUnit;
  readonly file: string;
  /** Start of the whole declaration. */
  readonly start: number;
  readonly end: number;
  /** Start of the declared name. */
  readonly nameStart: number;
}

/** Every declaration of a workspace file in one unit, in no particular order. */
export function* declaredIn(unit: ReadUnit): Generator<Declared> {
  const { preprocessed, typed } = unit;
  for (const macro of preprocessed.definitions) {
    const { definition, name } = macro;
    if (definition === undefined) continue;
    const end = macro.body.at(-1)?.end ?? definition.end;
    const { file, start } = definition;
    yield { target: { kind: "macro", name, macro }, unit, file, start, end, nameStart: start };
  }
  for (const symbol of [...typed.symbols, ...typed.locals]) {
    if (symbol.kind === "variable") {
      const target: Target = { kind: "variable", name: symbol.name, variable: symbol };
      for (const at of symbol.declarations) yield declared(target, unit, at, symbol.at.first);
    } else if (symbol.kind === "enumerator") {
      const target: Target = { kind: "enumerator", name: symbol.name, enumerator: symbol };
      yield declared(target, unit, symbol.at, symbol.at.first);
    } else if (symbol.kind === "function" && !symbol.standIn) {
      const target: Target = { kind: "function", name: symbol.name, function: symbol };
      for (const at of symbol.declarations) yield declared(target, unit, at, symbol.at.first);
    }
  }
  for (const [field, at] of typed.fieldPlaces) {
    yield declared({ kind: "field", name: field.name, field }, unit, at, at.first);
  }
}

function declared(target: Target, unit: ReadUnit, at: At, name: Token): Declared {
  const { file, start, end } = visibleRange(at.first, at.last);
  const within = name.file === file && name.start >= start && name.start < end;
  return { target, unit, file, start, end, nameStart: within ? name.start : start };
}
