import type { Span } from "../../finding.ts";
import { isStandIn, type Token, visibleSpan } from "../tokens.ts";
import type { FunctionSymbol, NamedSymbol, Reference, Variable } from "../typed/nodes.ts";
import type { Field } from "../types/types.ts";
import type { Program, ProgramUnit } from "./program.ts";

/** A symbol or field under the cursor. */
export interface SymbolAt {
  readonly target: NamedSymbol | Field;
  /** The name as it stands in the file; the macro call where the name came out of one. */
  readonly span: Span;
}

const holds = (span: Span, file: string, offset: number): boolean =>
  span.file === file && offset >= span.start && offset <= span.end;

/**
 * What the name at an offset means (the end of a name counts as in it). A name written in the file itself goes
 * before one that a macro call there brings in. Undefined for keywords, macros and names never declared.
 */
export function symbolAt(unit: ProgramUnit, file: string, offset: number): SymbolAt | undefined {
  let broughtIn: SymbolAt | undefined;
  for (const { token, target } of unit.typed.references) {
    const span = visibleSpan(token);
    if (!holds(span, file, offset)) continue;
    if (span === token) return { target, span };
    broughtIn ??= { target, span };
  }
  return broughtIn;
}

function isField(target: NamedSymbol | Field): target is Field {
  return "bitOffset" in target;
}

/** Every place where a symbol or field is named, in all units; each place once. */
export function referencesTo(program: Program, target: NamedSymbol | Field): readonly Span[] {
  const spans = new Map<string, Span>();
  for (const unit of program.units) {
    for (const reference of unit.typed.references) {
      if (!isSame(program, reference.target, target)) continue;
      const span = visibleSpan(reference.token);
      if (isStandIn(span.file)) continue;
      const { file, start, end } = span;
      spans.set(`${file}:${start}`, { file, start, end });
    }
  }
  return [...spans.values()];
}

function isSame(program: Program, a: Reference["target"], b: Reference["target"]): boolean {
  if (a === b) return true;
  if (isField(a) || isField(b)) return false;
  if (a.kind === "function" && b.kind === "function") {
    return a.linkageName !== undefined && a.linkageName === b.linkageName;
  }
  if (a.kind === "variable" && b.kind === "variable") {
    return program.definingVariable(a) === program.definingVariable(b);
  }
  return a.kind === b.kind && samePlace(a.at.first, b.at.first);
}

function samePlace(a: Token, b: Token): boolean {
  return a.file === b.file && a.start === b.start;
}

/** Where a symbol or field is defined, in whichever unit: its name there. Undefined within stand-in headers. */
export function definitionOf(program: Program, target: NamedSymbol | Field): Span | undefined {
  const token = definingToken(program, target);
  if (token === undefined) return undefined;
  const { file, start, end } = visibleSpan(token);
  return isStandIn(file) ? undefined : { file, start, end };
}

function definingToken(program: Program, target: NamedSymbol | Field): Token | undefined {
  if (isField(target)) {
    for (const unit of program.units) {
      const at = unit.typed.fieldPlaces.get(target);
      if (at !== undefined) return at.first;
    }
    return undefined;
  }
  return definingSymbol(program, target).at.first;
}

function definingSymbol(program: Program, target: NamedSymbol): FunctionSymbol | Variable | NamedSymbol {
  switch (target.kind) {
    case "function":
      return program.definitionOf(target) ?? target;
    case "variable":
      return program.definingVariable(target);
    case "enumerator":
    case "type":
      return target;
  }
}
