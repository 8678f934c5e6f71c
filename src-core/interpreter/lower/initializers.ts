import { defaultArguments, requiredArguments } from "../../reader/typed/default-arguments.ts";
import type {
  AggregateEntry,
  At,
  FunctionSymbol,
  TypedExpression,
  TypedInitializer,
} from "../../reader/typed/nodes.ts";
import { sizeOf } from "../../reader/types/layout.ts";
import type { Field, RecordDeclaration, Type } from "../../reader/types/types.ts";
import { inCallOrder } from "./call-order.ts";
import { argumentValue, unclearCall } from "./calls.ts";
import { isSilent } from "./copies.ts";
import { needsDestroying } from "./destructors.ts";
import { functionCode } from "./missing.ts";
import { objectAt, objectFromCopy } from "./objects.ts";
import { bound, placeOf, writePlace } from "./places.ts";
import { lastingAddress } from "./references.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { shapeOf, stored } from "./shape.ts";
import { wholeSteps } from "./temporaries.ts";
import { valueAs } from "./values.ts";

/** Whether the entries of a list are full expressions each, as avr-gcc has it in declarations. */
export type Entries = "whole" | "parts";

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
  entries: Entries = "parts",
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
        ...initializer.entries.flatMap((entry) => {
          const steps = (): string[] => entrySteps(scope, address, type, entry, entries);
          return entries === "whole" ? wholeSteps(scope, steps) : steps();
        }),
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
    const isLasting = /^\d+$/.test(address);
    if (!isLasting && !value.lvalue && needsDestroying(scope, value.type))
      throw new CannotLower("a reference in an object to a temporary one", at);
    const target = isLasting
      ? lastingAddress(scope, value, type.to, "program")
      : bound(scope, value, type.to);
    return `s${model.pointer / 8}(${address},${target},${p})`;
  }
  if (type.kind === "record") return objectAt(scope, address, ofClass(value, type.record));
  if (value.kind === "construct" && type.kind !== "integer") {
    return `(${[...initialized(scope, address, type, value.initializer, "zeroed"), address].join(",")})`;
  }
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
  if (type.kind === "array") {
    if (type.of.kind !== "record" && type.of.kind !== "array") return [];
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

function entrySteps(
  scope: FunctionScope,
  address: string,
  type: Type,
  entry: AggregateEntry,
  entries: Entries,
): string[] {
  const { target, initializer } = entry;
  if ("bitOffset" in target) return fieldSteps(scope, address, target, initializer, entries);
  if (type.kind !== "array") throw new CannotLower("an element of what is no array", initializer.at);
  const size = sizeOf(type.of, scope.linkage.model) ?? 0;
  const first = moved(address, target.index * size);
  const steps = initialized(scope, first, type.of, initializer, "as-it-is", entries);
  if (target.upTo > target.index && !isSilent(scope, type.of))
    throw new CannotLower("several elements made from one object", initializer.at);
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
  entries: Entries = "parts",
): string[] {
  const to = moved(address, Math.floor(field.bitOffset / 8));
  if (field.bitWidth === undefined)
    return initialized(scope, to, field.type, initializer, "as-it-is", entries);
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
  initializer: Extract<TypedInitializer, { kind: "constructor" }>,
): string[] {
  const { constructor: maker, arguments: given, at, guessed } = initializer;
  if (guessed === true) throw new CannotLower(unclearCall, at);
  if (maker !== undefined && maker.bodyless !== "default") {
    const base = type.kind === "record" ? inheritedFrom(type.record, maker) : undefined;
    if (type.kind === "record" && base !== undefined)
      return memberSteps(scope, address, type.record, at, new Map([[base, initializer]]));
    return [constructing(scope, address, maker, given, at)];
  }
  const [only] = given;
  if (given.length === 0) return defaultSteps(scope, address, type, at);
  if (type.kind !== "record" && only !== undefined && given.length === 1) {
    const shape = shapeOf(type, scope.linkage.model);
    if (shape !== undefined && shape.kind !== "object")
      return [stored(shape, address, valueAs(scope, only, shape), scope.place(at))];
  }
  if (only !== undefined && given.length === 1 && type.kind === "record")
    return [objectAt(scope, address, ofClass(only, type.record))];
  throw new CannotLower("an object made from these arguments", at);
}

/**
 * The base whose constructor, or whose base's, was brought in by `using`: it makes that part of the object, and the class itself
 * makes the rest (C++11 12.9p8). Undefined for a constructor of the class itself.
 */
function inheritedFrom(
  record: RecordDeclaration,
  { memberOf }: FunctionSymbol,
): RecordDeclaration | undefined {
  if (memberOf === undefined || memberOf === record) return undefined;
  const reaches = (from: RecordDeclaration): boolean =>
    from === memberOf || from.bases.some((base) => reaches(base.record));
  return record.bases.find((base) => reaches(base.record))?.record;
}

/** A call of a constructor for the object at an address. */
function constructing(
  scope: FunctionScope,
  address: string,
  maker: FunctionSymbol,
  given: readonly TypedExpression[],
  at: At,
): string {
  if (given.length < maker.type.parameters.length)
    throw new CannotLower("a constructor with too few arguments", at);
  const values = given.map((argument, index) => argumentValue(scope, argument, maker.type.parameters[index]));
  const order = { given, braces: at.last.text === "}" };
  return inCallOrder(scope, functionCode(scope, maker, at), [address, ...values], order);
}

/** An expression that an object of this class can be made from as it is: one of the class. */
export function ofClass(value: TypedExpression, record: RecordDeclaration): TypedExpression {
  if (value.type.kind === "record" && value.type.record === record) return value;
  const what = value.kind === "unresolved" ? value.what : "an object made from a value of another type";
  throw new CannotLower(what, value.at);
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
    : initialized(scope, address, type, given, "as-it-is", "whole");
}

/** What happens to an object that is given nothing: constructors of classes without parameters run. */
export function defaultSteps(scope: FunctionScope, address: string, type: Type, at: At): string[] {
  if (type.kind === "array" && type.length !== undefined) {
    const each = scope.temporary();
    const steps = defaultSteps(scope, each, type.of, at);
    if (steps.length === 0) return [];
    const size = sizeOf(type.of, scope.linkage.model) ?? 0;
    return [`repeat(${type.length},(i)=>{${[`${each}=${address}+i*${size}`, ...steps].join(";")}})`];
  }
  if (type.kind !== "record") return [];
  const makers = (scope.linkage.classOf(type.record)?.functions ?? []).filter(isWritten);
  const maker = makers.find((symbol) => requiredArguments(symbol) === 0);
  if (maker !== undefined) {
    const given = defaultArguments(maker, 0);
    // Temporaries of default arguments end before the next element is made (C++11 12.2p4).
    return wholeSteps(scope, () => [constructing(scope, address, maker, given, at)]);
  }
  if (makers.length > 0)
    throw new CannotLower("an object whose class has no constructor without arguments", at);
  return memberSteps(scope, address, type.record, at, new Map());
}

/** A constructor that its author wrote. */
function isWritten({ special, bodyless }: FunctionSymbol): boolean {
  return special === "constructor" && bodyless !== "default" && bodyless !== "delete";
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
    steps.push(...wholeSteps(scope, () => baseSteps(scope, to, type, given, at)));
  }
  steps.push(...classMarks(scope, address, record, record, 0, scope.place(at)));
  const starts = scope.linkage.classOf(record)?.fieldInitializers;
  for (const field of record.fields) {
    const given = said.get(field) ?? starts?.get(field.name)?.();
    const to = moved(address, field.bitOffset >> 3);
    // `cells()` makes zeros (C++11 8.5p7).
    if (given?.kind === "constructor" && field.bitWidth === undefined && given.arguments.length === 0)
      steps.push(...initialized(scope, to, field.type, given, "zeroed"));
    else if (given !== undefined)
      steps.push(...wholeSteps(scope, () => fieldSteps(scope, address, field, given)));
    else steps.push(...defaultSteps(scope, to, field.type, at));
  }
  return steps;
}

function baseSteps(
  scope: FunctionScope,
  address: string,
  type: Extract<Type, { kind: "record" }>,
  given: TypedInitializer | undefined,
  at: At,
): string[] {
  if (given?.kind === "value") return [objectFromCopy(scope, address, ofClass(given.value, type.record))];
  return firstSteps(scope, address, type, given, at);
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
