import type { Expression, Initializer } from "../syntax/nodes.ts";
import { referred } from "../types/derive.ts";
import { sizeOf } from "../types/layout.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { readAggregate } from "./aggregates.ts";
import { atOf, type Context } from "./context.ts";
import { convertTo } from "./convert.ts";
import { typeExpression } from "./expressions.ts";
import { constructorName } from "./functions.ts";
import { integerNode } from "./make.ts";
import type { At, FunctionSymbol, TypedExpression, TypedInitializer } from "./nodes.ts";
import { chooseOverload, completeArguments } from "./overloads.ts";

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
  const given = syntax.arguments.map((argument) => typeExpression(context, argument));
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

/** Arrays, and records without constructors: initialised member by member (C++11 8.5.1). */
export function isAggregate(context: Context, type: Type): boolean {
  if (type.kind === "array") return true;
  return type.kind === "record" && constructorsOf(context, type.record).length === 0;
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
    constructor: chosen,
    arguments: completeArguments(context, chosen, given),
  };
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
