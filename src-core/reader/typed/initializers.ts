import type { Expression, Initializer } from "../syntax/nodes.ts";
import { referred, unqualified } from "../types/derive.ts";
import { sizeOf } from "../types/layout.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { readAggregate } from "./aggregates.ts";
import { classConversion, takesItself } from "./class-conversions.ts";
import { atOf, type Context } from "./context.ts";
import { convertTo, toBase } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { constructorName } from "./functions.ts";
import { integerNode } from "./make.ts";
import type { At, FunctionSymbol, TypedExpression, TypedInitializer } from "./nodes.ts";
import { bestCandidate, chooseOverload, completeArguments } from "./overloads.ts";
import { expanded } from "./packs.ts";

/** The initialiser of an object of a declared type. */
export function typedInitializer(context: Context, type: Type, syntax: Initializer): TypedInitializer {
  const at = atOf(context, syntax);
  if (syntax.kind === "value") return initializerFrom(context, type, syntax.value);
  if (syntax.braces && isAggregate(context, type)) {
    return readAggregate(
      context,
      type,
      syntax.arguments.map((value) => ({ designators: [], value, first: value.first, end: value.end })),
      at,
    );
  }
  const given = expanded(context, syntax.arguments).map((argument) => typeExpression(context, argument));
  return (
    initializerOf(context, type, given, at) ?? {
      kind: "constructor",
      at,
      constructor: undefined,
      arguments: given,
    }
  );
}

/** What `= e`, a list entry, or an argument gives an object of this type. */
export function initializerFrom(context: Context, type: Type, value: Expression): TypedInitializer {
  const at = atOf(context, value);
  if (value.kind === "list") {
    if (isAggregate(context, type)) return readAggregate(context, type, value.entries, at);
    const given = value.entries.map((entry) => typeExpression(context, entry.value, type));
    const made = initializerOf(context, type, given, at);
    return made ?? { kind: "constructor", at, constructor: undefined, arguments: given };
  }
  return initializerFromTyped(context, type, typeExpression(context, value, type));
}

export function initializerFromTyped(context: Context, type: Type, value: TypedExpression): TypedInitializer {
  return { kind: "value", at: value.at, value: convertTo(context, value, type, "assignment") };
}

/** Arrays, and records without constructors of their author's: initialised member by member (C++11 8.5.1). */
export function isAggregate(context: Context, type: Type): boolean {
  if (type.kind === "array") return true;
  return type.kind === "record" && constructorsOf(context, type.record).every(isNobodys);
}

/** Written without a body by the author: the compiler's own, or none (C++11 8.4.2p4). */
function isNobodys({ bodyless }: FunctionSymbol): boolean {
  return bodyless === "default" || bodyless === "delete";
}

export function constructorsOf(context: Context, record: RecordDeclaration): readonly FunctionSymbol[] {
  const entry = context.unit.classes.get(record)?.scope.names.get(constructorName);
  return entry?.kind === "overloads" ? entry.functions : [];
}

/**
 * An object made from arguments in parentheses or braces. Undefined where there is nothing to do: an object
 * of a class without constructors and initial values, made from no arguments.
 */
export function initializerOf(
  context: Context,
  type: Type,
  given: readonly TypedExpression[],
  at: At,
): TypedInitializer | undefined {
  const [only] = given;
  if (type.kind !== "record") {
    if (only !== undefined && given.length === 1) return initializerFromTyped(context, type, only);
    return given.length === 0 ? zeroOf(context, referred(type), at) : undefined;
  }
  const isCopy = only?.type.kind === "record" && only.type.record === type.record && given.length === 1;
  if (isCopy && only !== undefined) return { kind: "value", at, value: only };
  const other = given.length === 1 && only !== undefined ? fromOther(context, type, only, at) : undefined;
  if (other !== undefined) return other;
  const constructors = constructorsOf(context, type.record);
  if (constructors.length === 0) {
    const state = context.unit.classes.get(type.record);
    const starts =
      state !== undefined && (state.fieldInitializers.size > 0 || basesStart(context, type.record));
    if (given.length === 0 && !starts) return undefined;
    return { kind: "constructor", at, constructor: undefined, arguments: given };
  }
  const chosen = chooseOverload(context, constructors, given);
  if (chosen === undefined) return { kind: "constructor", at, constructor: undefined, arguments: given };
  return {
    kind: "constructor",
    at,
    constructor: chosen.symbol,
    arguments: completeArguments(context, chosen.symbol, given),
    ...chosen.certainty,
  };
}

/** An object made from one of a derived class, or from what converts itself: no other constructor takes it. */
function fromOther(
  context: Context,
  type: Extract<Type, { kind: "record" }>,
  given: TypedExpression,
  at: At,
): TypedInitializer | undefined {
  if (given.type.kind !== "record") return undefined;
  const makers = constructorsOf(context, type.record).filter((maker) => !takesItself(maker, type.record));
  if (bestCandidate(context, makers, [given], undefined) !== undefined) return undefined;
  const plain = unqualified(type);
  const value = toBase(given, plain) ?? classConversion(context, given, plain, "explicit");
  return value && { kind: "value", at, value };
}

/** Whether a base class has something to run when a derived object begins. */
function basesStart(context: Context, record: RecordDeclaration): boolean {
  return record.bases.some(
    (base) => constructorsOf(context, base.record).length > 0 || basesStart(context, base.record),
  );
}

/** `T()` of a scalar is zero (C++11 8.5p7). */
function zeroOf(context: Context, type: Type, at: At): TypedInitializer | undefined {
  if (sizeOf(type, context.unit.model) === undefined || type.kind === "array") return undefined;
  const zero = integerNode(at, 0n, context.unit.types.int);
  return initializerFromTyped(context, type, zero);
}
