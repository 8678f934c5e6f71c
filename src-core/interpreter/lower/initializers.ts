import type { AggregateEntry, At, FunctionSymbol, TypedInitializer } from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { Field, RecordDeclaration, Type } from "../../reader/types/types.ts";
import { argumentValue, copied } from "./calls.ts";
import { bound, placeOf, writePlace } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { lowerValue, valueAs } from "./values.ts";

/**
 * JavaScript expressions that give an object at an address its first value. The address is a name or a number.
 * `zeroed` begins with zero bytes, as `T()` and globals do.
 */
export function initialized(
  scope: FunctionScope,
  address: string,
  type: Type,
  initializer: TypedInitializer,
  start: "as-it-is" | "zeroed",
): string[] {
  const size = sizeOf(type, scope.linkage.model);
  if (size === undefined) throw new CannotLower("an object of unknown size", initializer.at);
  const p = scope.place(initializer.at);
  switch (initializer.kind) {
    case "value":
      return [fromValue(scope, address, type, initializer)];
    case "aggregate":
      return [
        `zero(${address},${size},${p})`,
        ...initializer.entries.flatMap((entry) => entrySteps(scope, address, type, entry)),
        ...restSteps(scope, address, type, initializer),
      ];
    case "constructor": {
      const zeros = start === "zeroed" ? [`zero(${address},${size},${p})`] : [];
      return [...zeros, ...constructed(scope, address, type, initializer)];
    }
  }
}

function fromValue(
  scope: FunctionScope,
  address: string,
  type: Type,
  { value, at }: Extract<TypedInitializer, { kind: "value" }>,
): string {
  const { model } = scope.linkage;
  const p = scope.place(value.at);
  if (type.kind === "reference") {
    return `s${model.pointer / 8}(${address},${bound(scope, value, type.to)},${p})`;
  }
  if (value.kind === "construct" && type.kind !== "integer") {
    return `(${[...initialized(scope, address, type, value.initializer, "zeroed"), address].join(",")})`;
  }
  if (type.kind === "record") return copied(scope, address, value);
  if (type.kind === "array") {
    const size = sizeOf(type, model) ?? 0;
    const given = sizeOf(value.type, model) ?? 0;
    const place = placeOf(scope, value);
    if (place.kind !== "memory") throw new CannotLower("an array made from this", at);
    const copy = `copy(${address},${place.address},${Math.min(size, given)},${p})`;
    return given < size ? `(zero(${address},${size},${p}),${copy})` : copy;
  }
  const shape = shapeOf(type, model);
  if (shape === undefined) throw new CannotLower("an object whose type is not known", at);
  return stored(shape, address, valueAs(scope, value, shape), p);
}

/** Members that a list does not name: classes among them make themselves (C++11 8.5.1p7). */
function restSteps(
  scope: FunctionScope,
  address: string,
  type: Type,
  { entries, at }: Extract<TypedInitializer, { kind: "aggregate" }>,
): string[] {
  if (type.kind === "array" && type.of.kind === "record") {
    const size = sizeOf(type.of, scope.linkage.model) ?? 0;
    const given = (index: number): boolean =>
      entries.some(({ target }) => "index" in target && index >= target.index && index <= target.upTo);
    return Array.from({ length: type.length ?? 0 }, (_, index) =>
      given(index) ? [] : defaultSteps(scope, moved(address, index * size), type.of, at),
    ).flat();
  }
  if (type.kind !== "record" || type.record.keyword === "union") return [];
  const starts = scope.linkage.classOf(type.record)?.fieldInitializers;
  return type.record.fields.flatMap((field) => {
    if (entries.some(({ target }) => target === field)) return [];
    const given = starts?.get(field.name)?.();
    if (given !== undefined) return fieldSteps(scope, address, field, given);
    return defaultSteps(scope, moved(address, field.bitOffset >> 3), field.type, at);
  });
}

function entrySteps(scope: FunctionScope, address: string, type: Type, entry: AggregateEntry): string[] {
  const { target, initializer } = entry;
  if ("bitOffset" in target) return fieldSteps(scope, address, target, initializer);
  if (type.kind !== "array") throw new CannotLower("an element of what is no array", initializer.at);
  const size = sizeOf(type.of, scope.linkage.model) ?? 0;
  const first = moved(address, target.index * size);
  const steps = initialized(scope, first, type.of, initializer, "as-it-is");
  const p = scope.place(initializer.at);
  for (let index = target.index + 1; index <= target.upTo; index += 1) {
    steps.push(`copy(${moved(address, index * size)},${first},${size},${p})`);
  }
  return steps;
}

export function fieldSteps(
  scope: FunctionScope,
  address: string,
  field: Field,
  initializer: TypedInitializer,
): string[] {
  const to = moved(address, Math.floor(field.bitOffset / 8));
  if (field.bitWidth === undefined) return initialized(scope, to, field.type, initializer, "as-it-is");
  const shape = shapeOf(field.type, scope.linkage.model);
  if (initializer.kind !== "value" || shape === undefined)
    throw new CannotLower("a bit-field made from this", initializer.at);
  const place = { kind: "bits", address: to, bit: field.bitOffset % 8, width: field.bitWidth } as const;
  const value = valueAs(scope, initializer.value, shape);
  return [writePlace(scope, place, field.type, value, scope.place(initializer.at))];
}

export function moved(address: string, bytes: number): string {
  if (bytes === 0) return address;
  return /^\d+$/.test(address) ? String(Number(address) + bytes) : `(${address}+${bytes})`;
}

function constructed(
  scope: FunctionScope,
  address: string,
  type: Type,
  { constructor: maker, arguments: given, at }: Extract<TypedInitializer, { kind: "constructor" }>,
): string[] {
  if (maker !== undefined) {
    const parameters = given.map((argument, index) =>
      argumentValue(scope, argument, maker.type.parameters[index]),
    );
    return [`F[${scope.linkage.functionNumber(maker)}](${[address, ...parameters].join(",")})`];
  }
  const [only] = given;
  if (given.length === 0) return defaultSteps(scope, address, type, at);
  if (type.kind !== "record" && only !== undefined && given.length === 1) {
    const shape = shapeOf(type, scope.linkage.model);
    if (shape !== undefined && shape.kind !== "object")
      return [stored(shape, address, valueAs(scope, only, shape), scope.place(at))];
  }
  if (only?.type.kind === "record" && type.kind === "record" && only.type.record === type.record)
    return [
      stored(
        { kind: "object", size: type.record.size, record: type.record },
        address,
        lowerValue(scope, only),
        scope.place(at),
      ),
    ];
  throw new CannotLower("an object made from these arguments", at);
}

/** The first value of an object that is declared or made: what it is given, or what it makes of itself. */
export function firstSteps(
  scope: FunctionScope,
  address: string,
  type: Type,
  given: TypedInitializer | undefined,
  at: At,
): string[] {
  return given === undefined
    ? defaultSteps(scope, address, type, at)
    : initialized(scope, address, type, given, "as-it-is");
}

/** What happens to an object that is given nothing: constructors of classes without parameters run. */
export function defaultSteps(scope: FunctionScope, address: string, type: Type, at: At): string[] {
  if (type.kind === "array" && type.length !== undefined) {
    const size = sizeOf(type.of, scope.linkage.model) ?? 0;
    return Array.from({ length: type.length }, (_, index) =>
      defaultSteps(scope, moved(address, index * size), type.of, at),
    ).flat();
  }
  if (type.kind !== "record") return [];
  const maker = scope.linkage.classOf(type.record)?.functions.find(takesNothing);
  if (maker !== undefined) {
    // Default arguments are typed at calls; a constructor that has them is called through its initialiser.
    if (maker.type.parameters.length > 0) throw new CannotLower("a constructor's default arguments here", at);
    return [`F[${scope.linkage.functionNumber(maker)}](${address})`];
  }
  return memberSteps(scope, address, type.record, at, new Map());
}

function takesNothing({ special, type }: FunctionSymbol): boolean {
  return special === "constructor" && type.parameters.length === 0;
}

/**
 * Bases, the class's own number where it has virtual functions, and members in the order of their declaration
 * (C++11 12.6.2p10), each from what the constructor says of it, or else from its declaration.
 */
export function memberSteps(
  scope: FunctionScope,
  address: string,
  record: RecordDeclaration,
  at: At,
  said: ReadonlyMap<Field | RecordDeclaration, TypedInitializer>,
): string[] {
  const steps: string[] = [];
  for (const base of record.bases) {
    const type: Type = { kind: "record", record: base.record };
    const to = moved(address, base.offset);
    const given = said.get(base.record);
    steps.push(...firstSteps(scope, to, type, given, at));
  }
  steps.push(...classMarks(scope, address, record, record, 0, scope.place(at)));
  const starts = scope.linkage.classOf(record)?.fieldInitializers;
  for (const field of record.fields) {
    const given = said.get(field) ?? starts?.get(field.name)?.();
    // `cells()` makes zeros (C++11 8.5p7).
    if (given?.kind === "constructor" && field.bitWidth === undefined && given.arguments.length === 0)
      steps.push(...initialized(scope, moved(address, field.bitOffset >> 3), field.type, given, "zeroed"));
    else if (given !== undefined) steps.push(...fieldSteps(scope, address, field, given));
    else steps.push(...defaultSteps(scope, moved(address, field.bitOffset >> 3), field.type, at));
  }
  return steps;
}

/** Writes which class an object is of into it and its bases, where these have virtual functions. */
export function classMarks(
  scope: FunctionScope,
  address: string,
  whole: RecordDeclaration,
  part: RecordDeclaration,
  offset: number,
  place: number,
): string[] {
  if (!part.polymorphic) return [];
  const carriers = part.bases.filter(({ record }) => record.polymorphic);
  if (carriers.length > 0) {
    return carriers.flatMap((base) =>
      classMarks(scope, address, whole, base.record, offset + base.offset, place),
    );
  }
  const bytes = scope.linkage.model.pointer / 8;
  return [`s${bytes}(${moved(address, offset)},${scope.linkage.classNumber(whole, offset)},${place})`];
}
