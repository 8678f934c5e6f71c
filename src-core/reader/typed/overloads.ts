import { sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf, promote } from "../types/conversions.ts";
import { referred } from "../types/derive.ts";
import type { FunctionType, Type } from "../types/types.ts";
import { convertsByClass } from "./class-conversions.ts";
import type { Context } from "./context.ts";
import { basePath, convertTo, isNullConstant, promotedArgument } from "./convert.ts";
import { valueType } from "./make.ts";
import type { FunctionSymbol, TypedExpression } from "./nodes.ts";
import { DeclaredFunction } from "./symbols.ts";

/** How well an argument fits a parameter, best first (C++11 13.3.3.1.1, table 12). */
const fit = { exact: 0, promotion: 1, conversion: 2, userDefined: 3, ellipsis: 4, none: 9 };

/** Within a conversion that a class defines there is no second one (C++11 13.3.3.1p4). */
type Conversions = "all" | "standard";

function fitOf(
  context: Context,
  argument: TypedExpression,
  parameter: Type,
  conversions: Conversions,
): number {
  const to = referred(parameter);
  const from = parameter.kind === "reference" ? argument.type : valueType(argument);
  if (from.kind === "unknown" || to.kind === "unknown") return fit.conversion;
  if (sameUnqualified(from, to)) return bindsBadly(argument, parameter) ? fit.none : fit.exact;
  if (parameter.kind === "reference" && !parameter.rvalue && to.const !== true && argument.lvalue) {
    if (from.kind !== "record" || to.kind !== "record") return fit.none;
  }
  if (from.kind === "record" && to.kind === "record") {
    if (basePath(from.record, to.record) !== undefined) return fit.conversion;
  }
  if (from.kind === "record" || to.kind === "record") {
    const converts = conversions === "all" && convertsByClass(context, argument, to);
    return converts ? fit.userDefined : fit.none;
  }
  return scalarFit(context, argument, from, to);
}

/** A plain reference binds to no temporary (C++11 8.5.3p5). */
function bindsBadly(argument: TypedExpression, parameter: Type): boolean {
  if (parameter.kind !== "reference") return false;
  if (parameter.rvalue) return argument.lvalue;
  return parameter.to.const !== true && (!argument.lvalue || argument.type.const === true);
}

function scalarFit(context: Context, argument: TypedExpression, from: Type, to: Type): number {
  const fromNumber = arithmeticTypeOf(from);
  const toNumber = arithmeticTypeOf(to);
  if (fromNumber !== undefined && toNumber !== undefined && to.kind !== "enumeration") {
    if (fromNumber.kind === "integer" && sameUnqualified(promote(fromNumber, context.unit.model), toNumber)) {
      return fit.promotion;
    }
    const widens = fromNumber.kind === "floating" && toNumber.kind === "floating";
    return widens && toNumber.rank === "double" ? fit.promotion : fit.conversion;
  }
  if (to.kind === "pointer") {
    if (isNullConstant(argument)) return fit.conversion;
    if (from.kind !== "pointer") return fit.none;
    if (sameUnqualified(from.to, to.to)) {
      const loses =
        (from.to.const === true && to.to.const !== true) ||
        (from.to.volatile === true && to.to.volatile !== true);
      if (loses) return fit.none;
      return from.to.const === to.to.const ? fit.exact : fit.promotion;
    }
    if (to.to.kind === "void") return fit.conversion + 0.5;
    const { to: source } = from;
    const isBase =
      source.kind === "record" &&
      to.to.kind === "record" &&
      basePath(source.record, to.to.record) !== undefined;
    return isBase ? fit.conversion : fit.none;
  }
  // Any other conversion of a pointer is better than that to `bool` (C++11 13.3.3.2, 4).
  if (from.kind === "pointer" && to.kind === "integer" && to.rank === "bool") return fit.conversion + 0.75;
  return fit.none;
}

function requiredArguments(symbol: FunctionSymbol): number {
  const count = symbol.type.parameters.length;
  if (!(symbol instanceof DeclaredFunction)) return count;
  let required = count;
  while (required > 0 && symbol.defaults[required - 1] !== undefined) required -= 1;
  return required;
}

function takes(symbol: FunctionSymbol, count: number): boolean {
  const { parameters, variadic } = symbol.type;
  return count >= requiredArguments(symbol) && (count <= parameters.length || variadic);
}

function fits(
  context: Context,
  symbol: FunctionSymbol,
  given: readonly TypedExpression[],
  conversions: Conversions,
): readonly number[] {
  return given.map((argument, index) => {
    const parameter = symbol.type.parameters[index];
    return parameter === undefined ? fit.ellipsis : fitOf(context, argument, parameter, conversions);
  });
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);

/**
 * The function that a call with these arguments means (C++11 13.3): by number of arguments, then by how well
 * each fits. Undefined where none can take them.
 */
export function bestOverload(
  context: Context,
  candidates: readonly FunctionSymbol[],
  given: readonly TypedExpression[],
  conversions: Conversions = "all",
): FunctionSymbol | undefined {
  let best: FunctionSymbol | undefined;
  let bestFit = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    if (!takes(candidate, given.length)) continue;
    const each = fits(context, candidate, given, conversions);
    if (each.includes(fit.none)) continue;
    const total = sum(each);
    if (total < bestFit) {
      best = candidate;
      bestFit = total;
    }
  }
  return best;
}

/**
 * `bestOverload`; where none fits, the only function there is, or the first that takes so many arguments:
 * a slip in an argument should not hide which function is meant.
 */
export function chooseOverload(
  context: Context,
  candidates: readonly FunctionSymbol[],
  given: readonly TypedExpression[],
): FunctionSymbol | undefined {
  if (candidates.length === 1) return candidates[0];
  return (
    bestOverload(context, candidates, given) ?? candidates.find((candidate) => takes(candidate, given.length))
  );
}

/** Arguments converted to the parameters' types, default arguments filled in. */
export function completeArguments(
  context: Context,
  symbol: FunctionSymbol,
  given: readonly TypedExpression[],
): TypedExpression[] {
  const converted = convertArguments(context, symbol.type, given);
  if (!(symbol instanceof DeclaredFunction)) return converted;
  for (let index = given.length; index < symbol.type.parameters.length; index += 1) {
    const value = symbol.defaults[index]?.();
    if (value === undefined) break;
    converted.push(
      value.kind === "value"
        ? value.value
        : {
            kind: "construct",
            at: value.at,
            type: symbol.type.parameters[index] ?? context.unit.types.int,
            lvalue: false,
            initializer: value,
          },
    );
  }
  return converted;
}

export function convertArguments(
  context: Context,
  type: FunctionType,
  given: readonly TypedExpression[],
): TypedExpression[] {
  return given.map((argument, index) => {
    const parameter = type.parameters[index];
    return parameter === undefined
      ? promotedArgument(context, argument)
      : convertTo(context, argument, parameter, "argument");
  });
}
