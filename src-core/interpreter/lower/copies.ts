import type { At, FunctionSymbol } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { RecordDeclaration, Type } from "../../reader/types/types.ts";
import { copiedBits } from "./bit-fields.ts";
import { needsDestroying } from "./destructors.ts";
import { classMarks, moved } from "./initializers.ts";
import { functionCode } from "./missing.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";

/** Whether an object is made, or assigned, from one that stays or from one that is about to end. */
export type Source = "stays" | "ends";

/** JavaScript expressions that build a copy of an object. Addresses are names or numbers. */
export function copySteps(
  scope: FunctionScope,
  to: string,
  from: string,
  type: Type,
  source: Source,
  at: At,
): string[] {
  if (isPlain(scope, type)) return [`copy(${to},${from},${bytesOf(scope, type, at)},${scope.place(at)})`];
  if (type.kind === "array")
    return eachElement(scope, to, from, type, at, (a, b) => copySteps(scope, a, b, type.of, source, at));
  if (type.kind !== "record") throw new CannotLower("a copy of this object", at);
  const maker = makerFrom(scope, type.record, source);
  if (maker === undefined) return memberCopies(scope, to, from, type.record, source, at);
  if (maker.type.parameters.length > 1)
    throw new CannotLower("a copy constructor with default arguments", at);
  return [`${functionCode(scope, maker, at)}(${to},${from})`];
}

/** Bases, then members in the order of their declaration (C++11 12.8p15). */
function memberCopies(
  scope: FunctionScope,
  to: string,
  from: string,
  record: RecordDeclaration,
  source: Source,
  at: At,
): string[] {
  if (record.keyword === "union")
    throw new CannotLower("a copy of a union whose members copy themselves", at);
  // A class with a copy constructor, a destructor or the like of its own moves nothing by itself (C++11 12.8p9).
  const inner = source === "ends" && hasSpecial(scope, record) ? "stays" : source;
  const bases = record.bases.flatMap((base) =>
    copySteps(
      scope,
      moved(to, base.offset),
      moved(from, base.offset),
      { kind: "record", record: base.record },
      inner,
      at,
    ),
  );
  const fields = record.fields.flatMap(({ type, bitOffset, bitWidth }) => {
    const [target, given] = [moved(to, bitOffset >> 3), moved(from, bitOffset >> 3)];
    if (bitWidth !== undefined) return [copiedBits(target, given, bitOffset % 8, bitWidth, scope.place(at))];
    return copySteps(scope, target, given, type, inner, at);
  });
  return [...bases, ...classMarks(scope, to, record, record, 0, scope.place(at)), ...fields];
}

/** Does the same to each element of two arrays, from the first on. */
export function eachElement(
  scope: FunctionScope,
  to: string,
  from: string,
  type: Extract<Type, { kind: "array" }>,
  at: At,
  steps: (to: string, from: string) => string[],
): string[] {
  const [target, given] = [scope.temporary(), scope.temporary()];
  const size = bytesOf(scope, type.of, at);
  const one = [`${target}=${to}+i*${size}`, `${given}=${from}+i*${size}`, ...steps(target, given)];
  return [`repeat(${type.length ?? 0},(i)=>{${one.join(";")}})`];
}

export function bytesOf(scope: FunctionScope, type: Type, at: At): number {
  const size =
    type.kind === "reference" ? scope.linkage.model.pointer / 8 : sizeOf(type, scope.linkage.model);
  if (size === undefined) throw new CannotLower("a copy of an object of unknown size", at);
  return size;
}

/** Whether a copy of its bytes is a copy of the object. */
export function isPlain(scope: FunctionScope, type: Type): boolean {
  if (type.kind === "array") return isPlain(scope, type.of);
  if (type.kind !== "record") return true;
  const { record } = type;
  return (
    !record.polymorphic &&
    !functionsOf(scope, record).some((symbol) => isMaker(symbol) && symbol.bodyless !== "default") &&
    record.fields.every((field) => isPlain(scope, field.type)) &&
    record.bases.every((base) => isPlain(scope, { kind: "record", record: base.record }))
  );
}

/** Whether nobody can tell how often an object of this type is copied. */
export function isSilent(scope: FunctionScope, type: Type): boolean {
  return isPlain(scope, type) && !needsDestroying(scope, type);
}

/** The constructor that the author gave a class for this; undefined where there is none. */
function makerFrom(
  scope: FunctionScope,
  record: RecordDeclaration,
  source: Source,
): FunctionSymbol | undefined {
  const makers = functionsOf(scope, record).filter(
    (symbol) => isMaker(symbol) && symbol.bodyless !== "default",
  );
  const moving = makers.find((symbol) => takesRvalue(symbol));
  const isOwnMove = moving !== undefined && moving.bodyless !== "delete";
  if (source === "ends" && isOwnMove) return moving;
  const copying = makers.filter((symbol) => !takesRvalue(symbol));
  return copying.find(takesConst) ?? copying[0];
}

function functionsOf(scope: FunctionScope, record: RecordDeclaration): readonly FunctionSymbol[] {
  return scope.linkage.classOf(record)?.functions ?? [];
}

/** A copy or move constructor. */
export function isMaker(symbol: FunctionSymbol): boolean {
  return symbol.special === "constructor" && takesOwn(symbol);
}

/** Its first parameter is a reference to an object of its own class. */
export function takesOwn({ type, memberOf }: FunctionSymbol): boolean {
  const [first] = type.parameters;
  return first?.kind === "reference" && first.to.kind === "record" && first.to.record === memberOf;
}

export function takesRvalue({ type }: FunctionSymbol): boolean {
  const [first] = type.parameters;
  return first?.kind === "reference" && first.rvalue;
}

function takesConst({ type }: FunctionSymbol): boolean {
  const [first] = type.parameters;
  return first?.kind === "reference" && first.to.const === true;
}

/** It says how it is copied, assigned or destroyed. */
export function hasSpecial(scope: FunctionScope, record: RecordDeclaration): boolean {
  return functionsOf(scope, record).some(
    (symbol) =>
      symbol.special === "destructor" || isMaker(symbol) || (symbol.name === "operator=" && takesOwn(symbol)),
  );
}
