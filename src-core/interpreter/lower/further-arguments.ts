import type { TypedExpression } from "../../reader/typed/nodes.ts";
import { hasOwnWidth } from "../../reader/types/conversions.ts";
import { alignmentOf, sizeOf } from "../../reader/types/layout.ts";
import type { DataModel, Type } from "../../reader/types/types.ts";
import { address, placeOnce, readPlace, writePlace } from "./places.ts";
import { CannotLower, type FunctionScope } from "./scope.ts";
import { loaded, stored } from "./shape.ts";
import { lowerValue, shapeAt } from "./values.ts";

/*
 * Arguments behind `...` lie one after the other in the caller's frame, where `va_arg` finds them, and are passed one by
 * one as well, for functions that are no code of the author. The last argument of such a call is where they begin.
 */

/** Where a function with `...` finds its further arguments, as a parameter of the generated code. */
export const furtherParameter = "...further";

/** Arguments behind `...`, and behind them where they lie. */
export function lowerFurther(
  scope: FunctionScope,
  given: readonly TypedExpression[],
  call: TypedExpression,
): readonly string[] {
  const { model } = scope.linkage;
  const offsets: number[] = [];
  let end = 0;
  for (const argument of given) {
    const offset = roundUp(end, stepOf(argument.type, model));
    offsets.push(offset);
    end = offset + sizeOfArgument(scope, argument.type, argument);
  }
  const area = scope.room(end, model.maxAlignment);
  const values = given.map((argument, index) => {
    const shape = shapeAt(scope, argument);
    const to = `(${area}+${offsets[index] ?? 0})`;
    return stored(shape, to, lowerValue(scope, argument), scope.place(call.at));
  });
  return [...values, area];
}

/** What `va_start` puts into its list. */
export const furtherArguments = "further[further.length-1]";

/** `va_arg`: what lies where the list stands, which then stands behind it (C11 7.16.1.1). */
export function nextArgument(
  scope: FunctionScope,
  expression: Extract<TypedExpression, { kind: "next-argument" }>,
): string {
  const { operand, type, at } = expression;
  const { model } = scope.linkage;
  const shape = shapeAt(scope, expression);
  if (isPromoted(type, model)) throw new CannotLower("`va_arg` with a type that arguments never have", at);
  if (operand.type.kind !== "pointer") throw new CannotLower("`va_arg` of what is no list", operand.at);
  const { before, place } = placeOnce(scope, operand);
  const step = stepOf(type, model);
  const held = scope.temporary();
  const here = readPlace(scope, place, operand);
  const start = step === 1 ? here : address(scope, `${here}+${step - 1}&${-step}`);
  const next = address(scope, `${held}+${sizeOfArgument(scope, type, expression)}`);
  const write = writePlace(scope, place, operand.type, next, scope.place(at));
  return `(${before}${held}=${start},${write},${loaded(shape, held, scope.place(at))})`;
}

/** Narrower than what default argument promotions leave (C11 6.5.2.2p6, 7.16.1.1p2). */
function isPromoted(type: Type, model: DataModel): boolean {
  if (type.kind === "floating") return type.rank === "float";
  return type.kind === "integer" && (type.rank === "bool" || type.bits < model.int);
}

function sizeOfArgument(scope: FunctionScope, type: Type, { at }: TypedExpression): number {
  const { model } = scope.linkage;
  const size = sizeOf(type, model);
  if (size === undefined || !isPassed(type))
    throw new CannotLower("an argument of this type behind `...`", at);
  return roundUp(size, model.name === "avr" ? 1 : model.int / 8);
}

/** Arithmetic on a wide bit-field has a type that only the compiler knows how to pass. */
function isPassed(type: Type): boolean {
  return type.kind === "integer" ? !hasOwnWidth(type) : type.kind !== "void" && type.kind !== "reference";
}

/** Arguments begin at their alignment, on the 32-bit targets at a word at least. */
function stepOf(type: Type, model: DataModel): number {
  return model.name === "avr" ? 1 : Math.max(alignmentOf(type, model), model.int / 8);
}

const roundUp = (value: number, to: number): number => Math.ceil(value / to) * to;
