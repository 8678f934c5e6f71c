import { sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf } from "../types/conversions.ts";
import { referred } from "../types/derive.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { closureFunction, closurePointer } from "./closures.ts";
import type { Context } from "./context.ts";
import { convertTo } from "./convert.ts";
import { constructorsOf } from "./initializers.ts";
import type { ConversionReason, FunctionSymbol, TypedExpression } from "./nodes.ts";
import { bestOverload, completeArguments } from "./overloads.ts";

/** Conversion functions of a class, its bases' included. */
function conversionFunctions(context: Context, record: RecordDeclaration): FunctionSymbol[] {
  const own = (context.unit.classes.get(record)?.functions ?? []).filter(
    (candidate) => candidate.special === "conversion",
  );
  return [...own, ...record.bases.flatMap((base) => conversionFunctions(context, base.record))];
}

/** The conversion function that leads to a type: the exact one, else one to another arithmetic type. */
function conversionTo(context: Context, record: RecordDeclaration, target: Type): FunctionSymbol | undefined {
  const functions = conversionFunctions(context, record);
  const exact = functions.find((candidate) => sameUnqualified(referred(candidate.type.returns), target));
  if (exact !== undefined || arithmeticTypeOf(target) === undefined) return exact;
  return functions.find((candidate) => arithmeticTypeOf(referred(candidate.type.returns)) !== undefined);
}

function isOneArgument(symbol: FunctionSymbol): boolean {
  return symbol.type.parameters.length >= 1;
}

function convertingConstructor(
  context: Context,
  value: TypedExpression,
  record: RecordDeclaration,
): FunctionSymbol | undefined {
  const candidates = constructorsOf(context, record).filter(isOneArgument);
  return bestOverload(
    context,
    candidates.filter((candidate) => !takesRecordItself(candidate, record)),
    [value],
    "standard",
  );
}

/** Copy and move constructors convert nothing. */
function takesRecordItself(symbol: FunctionSymbol, record: RecordDeclaration): boolean {
  const [parameter] = symbol.type.parameters;
  const type = parameter && referred(parameter);
  return type?.kind === "record" && type.record === record;
}

/** Whether a class has a conversion from this value to that type. */
export function convertsByClass(context: Context, value: TypedExpression, target: Type): boolean {
  if (closureFunction(context, value.type, target) !== undefined) return true;
  if (value.type.kind === "record" && conversionTo(context, value.type.record, target) !== undefined)
    return true;
  if (value.type.kind === "record" || target.kind !== "record") return false;
  return convertingConstructor(context, value, target.record) !== undefined;
}

/** A conversion that a class defines: a conversion function of the source, a constructor of the target. */
export function classConversion(
  context: Context,
  value: TypedExpression,
  target: Type,
  reason: ConversionReason,
): TypedExpression | undefined {
  const lambda = closureFunction(context, value.type, target);
  if (lambda !== undefined) return closurePointer(value, lambda, reason);
  if (value.type.kind === "record") {
    const method = conversionTo(context, value.type.record, target);
    if (method === undefined) return undefined;
    const called: TypedExpression = {
      kind: "method-call",
      at: value.at,
      type: referred(method.type.returns),
      lvalue: method.type.returns.kind === "reference",
      object: value,
      method,
      virtual: method.isVirtual,
      arguments: [],
    };
    return convertTo(context, called, target, reason);
  }
  if (target.kind !== "record") return undefined;
  const converting = convertingConstructor(context, value, target.record);
  if (converting === undefined) return undefined;
  return {
    kind: "construct",
    at: value.at,
    type: target,
    lvalue: false,
    initializer: {
      kind: "constructor",
      at: value.at,
      constructor: converting,
      arguments: completeArguments(context, converting, [value]),
    },
  };
}
