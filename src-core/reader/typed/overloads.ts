import { sameUnqualified } from "../types/compare.ts";
import { arithmeticTypeOf, promote } from "../types/conversions.ts";
import { qualifiersOf, referred } from "../types/derive.ts";
import type { FunctionType, Type } from "../types/types.ts";
import { resultByClass } from "./class-conversions.ts";
import type { Context } from "./context.ts";
import { basePath, convertTo, isNullConstant, promotedArgument } from "./convert.ts";
import { defaultArguments, requiredArguments } from "./default-arguments.ts";
import { valueType } from "./make.ts";
import type { FunctionSymbol, TypedExpression } from "./nodes.ts";

/** How well an argument fits a parameter, best first (C++11 13.3.3.1.1, table 12). */
const fit = { exact: 0, promotion: 1, conversion: 2, userDefined: 3, ellipsis: 4, none: 9 };

/** Added where of two references one is bound that is more const, or to a temporary no `&&` (C++11 13.3.3.2p3). */
const lessApt = 0.01;

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
  if (sameUnqualified(from, to)) {
    return bindsBadly(argument, parameter) ? fit.none : fit.exact + bindingOf(argument, parameter);
  }
  if (from.kind === "record" && to.kind === "record") {
    const path = basePath(from.record, to.record);
    if (path !== undefined && bindsBadly(argument, parameter)) return fit.none;
    if (path !== undefined) return fit.conversion + path.length * 0.05 + bindingOf(argument, parameter);
  }
  // A converted value is a temporary.
  if (parameter.kind === "reference" && !parameter.rvalue && to.const !== true) return fit.none;
  if (from.kind === "record" || to.kind === "record") {
    const second = conversions === "all" ? fitByClass(context, argument, to) : undefined;
    return second === undefined ? fit.none : fit.userDefined + second / 10 + madeFor(parameter);
  }
  return scalarFit(context, argument, from, to) + madeFor(parameter);
}

/** The standard conversion after the class's own; undefined where no class has a conversion. */
function fitByClass(context: Context, argument: TypedExpression, to: Type): number | undefined {
  const result = resultByClass(context, argument, to);
  if (result === undefined || result.kind === "record" || sameUnqualified(result, to)) return result && 0;
  return scalarFit(context, argument, result, to);
}

const isRvalue = ({ lvalue, xvalue, type }: TypedExpression): boolean =>
  type.kind !== "function" && (!lvalue || xvalue === true);

/** A plain reference binds to no temporary (C++11 8.5.3p5), and none drops a qualifier. */
function bindsBadly(argument: TypedExpression, parameter: Type): boolean {
  if (parameter.kind !== "reference") return false;
  const { to, rvalue } = parameter;
  const from = qualifiersOf(argument.type);
  const target = qualifiersOf(to);
  if ((from.const && !target.const) || (from.volatile && !target.volatile)) return true;
  return rvalue ? !isRvalue(argument) : isRvalue(argument) && !target.const;
}

function bindingOf(argument: TypedExpression, parameter: Type): number {
  if (parameter.kind !== "reference") return 0;
  const addsConst = qualifiersOf(parameter.to).const && !qualifiersOf(argument.type).const;
  const isPlain = isRvalue(argument) && !parameter.rvalue;
  return (addsConst ? lessApt : 0) + (isPlain ? lessApt : 0);
}

/** A converted value is a temporary too, apter for `&&`. */
function madeFor(parameter: Type): number {
  return parameter.kind === "reference" && !parameter.rvalue ? lessApt : 0;
}

/** How well an object fits a member function: one that is const too, or may be. */
function objectFit(symbol: FunctionSymbol, object: TypedExpression | undefined): number {
  const isPlain = symbol.memberOf === undefined || symbol.isStatic || symbol.special === "constructor";
  if (object === undefined || isPlain || object.type.kind !== "record") return fit.exact;
  const takesConst = symbol.type.const === true;
  if (qualifiersOf(object.type).const) return takesConst ? fit.exact : fit.none;
  return takesConst ? fit.exact + lessApt : fit.exact;
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
      return from.to.const === to.to.const ? fit.exact : fit.exact + lessApt;
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

/** A function that can be called, and how well: the less the better. */
export interface Candidate {
  readonly symbol: FunctionSymbol;
  readonly fit: number;
}

/**
 * The function that a call with these arguments means (C++11 13.3): by number of arguments, then by how well
 * each fits, the object of a member function among them. Undefined where none can take them.
 */
export function bestCandidate(
  context: Context,
  candidates: readonly FunctionSymbol[],
  given: readonly TypedExpression[],
  object: TypedExpression | undefined,
  conversions: Conversions = "all",
): Candidate | undefined {
  let best: Candidate | undefined;
  for (const symbol of candidates) {
    if (!takes(symbol, given.length)) continue;
    const each = [objectFit(symbol, object), ...fits(context, symbol, given, conversions)];
    if (each.some((one) => one >= fit.none)) continue;
    const total = sum(each);
    if (best === undefined || total < best.fit) best = { symbol, fit: total };
  }
  return best;
}

/** A function that is meant, or may be meant. */
export interface Choice {
  readonly symbol: FunctionSymbol;
  readonly certainty: { readonly guessed?: true };
}

/**
 * `bestCandidate`; where none fits, the only function there is, or the first that takes so many arguments:
 * a slip in an argument should not hide which function is meant.
 */
export function chooseOverload(
  context: Context,
  candidates: readonly FunctionSymbol[],
  given: readonly TypedExpression[],
  object?: TypedExpression,
): Choice | undefined {
  const [first] = candidates;
  if (first !== undefined && candidates.length === 1) return { symbol: first, certainty: {} };
  const best = bestCandidate(context, candidates, given, object);
  if (best !== undefined) return { symbol: best.symbol, certainty: {} };
  const guess = candidates.find((candidate) => takes(candidate, given.length));
  return guess && { symbol: guess, certainty: { guessed: true } };
}

/** Arguments converted to the parameters' types, default arguments filled in. */
export function completeArguments(
  context: Context,
  symbol: FunctionSymbol,
  given: readonly TypedExpression[],
): TypedExpression[] {
  return [...convertArguments(context, symbol.type, given), ...defaultArguments(symbol, given.length)];
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
