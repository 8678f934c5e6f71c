import { sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf } from "../types/conversions.ts";
import { referred } from "../types/derive.ts";
import type { RecordDeclaration, Type } from "../types/types.ts";
import { closureFunction, closurePointer } from "./closures.ts";
import type { Context } from "./context.ts";
import { convertTo } from "./convert.ts";
import { constructorsOf } from "./initializers.ts";
import { categoryOf } from "./make.ts";
import type { ConversionReason, FunctionSymbol, TypedExpression } from "./nodes.ts";
import { bestCandidate, completeArguments } from "./overloads.ts";
import { DeclaredFunction } from "./symbols.ts";

/** Conversion functions of a class, its bases' included. */
function conversionFunctions(context: Context, record: RecordDeclaration): FunctionSymbol[] {
  const own = (context.unit.classes.get(record)?.functions ?? []).filter(
    (candidate) => candidate.special === "conversion",
  );
  return [...own, ...record.bases.flatMap((base) => conversionFunctions(context, base.record))];
}

/** Whether conversions are considered that do nothing unasked: in casts and conditions they are. */
type Asked = "implicit" | "explicit";

/**
 * The conversion function that leads to a type: the exact one, else the one to another arithmetic type where there is
 * just one. Those marked `explicit` give exactly what is asked for (C++11 13.3.1.5p1).
 */
function conversionTo(
  context: Context,
  value: TypedExpression,
  record: RecordDeclaration,
  target: Type,
  asked: Asked,
): FunctionSymbol | undefined {
  const isConst = value.type.const === true;
  const functions = conversionFunctions(context, record).filter(
    ({ type }) => type.const === true || !isConst,
  );
  const unasked = functions.filter((candidate) => !isExplicit(candidate));
  const exact = (asked === "explicit" ? functions : unasked).find(({ type }) =>
    sameUnqualified(referred(type.returns), target),
  );
  if (exact !== undefined || target.kind === "record") return exact;
  const scalars = unasked.filter(({ type }) => isScalar(referred(type.returns)));
  return scalars.length === 1 ? scalars[0] : undefined;
}

const isScalar = (type: Type): boolean => arithmeticTypeOf(type) !== undefined || type.kind === "pointer";

function isExplicit(symbol: FunctionSymbol): boolean {
  return symbol instanceof DeclaredFunction && symbol.isExplicit;
}

function convertingConstructor(
  context: Context,
  value: TypedExpression,
  record: RecordDeclaration,
  asked: Asked,
): FunctionSymbol | undefined {
  const candidates = constructorsOf(context, record).filter(
    (candidate) =>
      candidate.type.parameters.length > 0 &&
      !takesItself(candidate, record) &&
      (asked === "explicit" || !isExplicit(candidate)),
  );
  return bestCandidate(context, candidates, [value], undefined, "standard")?.symbol;
}

/** Copy and move constructors convert nothing. */
export function takesItself(symbol: FunctionSymbol, record: RecordDeclaration): boolean {
  const [parameter] = symbol.type.parameters;
  const type = parameter && referred(parameter);
  return type?.kind === "record" && type.record === record;
}

/** What a class's own conversion makes of this value on the way to that type; undefined for none. */
export function resultByClass(context: Context, value: TypedExpression, target: Type): Type | undefined {
  if (closureFunction(context, value.type, target) !== undefined) return target;
  if (value.type.kind === "record") {
    const method = conversionTo(context, value, value.type.record, target, "implicit");
    if (method !== undefined) return referred(method.type.returns);
  }
  if (target.kind !== "record") return undefined;
  return convertingConstructor(context, value, target.record, "implicit") && target;
}

/**
 * An operand of a built-in operator: an object of a class as what its only conversion function to a scalar gives
 * (C++11 13.3.1.2p1).
 */
export function asOperand(context: Context, operand: TypedExpression): TypedExpression {
  if (operand.type.kind !== "record") return operand;
  const { record } = operand.type;
  const method = conversionTo(context, operand, record, context.unit.types.int, "implicit");
  return method === undefined ? operand : converted(operand, method);
}

function converted(object: TypedExpression, method: FunctionSymbol): TypedExpression {
  return {
    kind: "method-call",
    at: object.at,
    type: referred(method.type.returns),
    ...categoryOf(method.type.returns),
    object,
    method,
    virtual: method.isVirtual,
    arguments: [],
  };
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
  const asked = reason === "explicit" ? "explicit" : "implicit";
  if (value.type.kind === "record") {
    const method = conversionTo(context, value, value.type.record, target, asked);
    if (method !== undefined) return convertTo(context, converted(value, method), target, reason);
  }
  if (target.kind !== "record") return undefined;
  const converting = convertingConstructor(context, value, target.record, asked);
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
