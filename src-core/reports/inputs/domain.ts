import type { MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import { movementRange, type ReportValues } from "../../model/layouts/values.ts";
import { layouts } from "../../model/report-layouts.ts";
import { givenByCallers } from "../given/given-by-callers.ts";
import type { Interval } from "../given/interval.ts";
import { type Bound, isMovement } from "../subject/operands.ts";
import type { Request } from "../trial-request.ts";

/**
 * All that a movement may be in a trial, in the layout's sense and smallest first; 0 is among them. What no caller gives is
 * left out where a report cannot carry it either.
 */
export function movementValues(
  field: MovementField,
  bound: Bound,
  callers: Interval | undefined,
): readonly number[] {
  const { bits, signed } = bound.shape;
  const lowest = -(2 ** (bits - 1));
  const highest = -lowest - 1;
  // What an unsigned place holds is taken as two's complement. The lowest value has no opposite of its type.
  const least = bound.operand.negated && (signed || bits < 32) ? lowest + 1 : lowest;
  const own = field.name === "wheel" && bits <= 8 ? wheelValues() : countValues();
  const { max: carried } = movementRange(field);
  return own.filter((value) => {
    const given = bound.operand.negated ? -value : value;
    if (given < least || given > highest) return false;
    const isGiven = callers === undefined || (given >= callers.min && given <= callers.max);
    return isGiven || Math.abs(value) <= carried;
  });
}

/**
 * A wheel turns by few steps in a report: what the widest of the mouse's own reports can say. There is no type as
 * narrow as that, so whoever takes eight bits is trusted to be given no more.
 */
function wheelValues(): readonly number[] {
  const field = layouts["ps2-wheel"].movements.find(({ name }) => name === "wheel");
  return range(field?.min ?? 0, field?.max ?? 0);
}

/** Every movement that one report of the mouse can say and some beyond, and the edges of the integer types. */
function countValues(): readonly number[] {
  const edges = [9, 10, 11, 12, 13, 14, 15].flatMap((bit) => [2 ** bit - 1, 2 ** bit, 2 ** bit + 1]);
  const beyond = edges.filter((value) => value > everyCount && value <= 2 ** 15);
  return [...beyond.map((value) => -value).reverse(), ...range(-everyCount, everyCount), ...beyond];
}

const everyCount = 300;

/** No movement of an input is beyond what is tried one by one. */
export function isUsual(values: ReportValues): boolean {
  return Object.values(values).every((value) => Math.abs(Number(value)) <= everyCount);
}

function range(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

/** The operand of each movement and button that the note names. */
export function operandsByField(
  layout: ReportLayout,
  operands: readonly Bound[],
  { program, symbol }: Pick<Request, "program" | "symbol">,
) {
  const moved = layout.movements.flatMap((field) => {
    const bound = operands.find((each) => each.field === field.name);
    return bound === undefined ? [] : [{ field, bound }];
  });
  const paths = moved.map(({ bound }) => bound.operand.path);
  const isWide = moved.some(({ bound }) => bound.shape.bits > 8);
  const callers = isWide ? givenByCallers(program, symbol, paths) : [];
  return {
    movements: moved.map(({ field, bound }, index) => ({
      field,
      bound,
      // What an unsigned place is given counts upwards from 0, whatever it means.
      values: movementValues(field, bound, bound.shape.signed ? callers[index] : undefined),
    })),
    buttons: layout.fields.flatMap((field) => {
      if (isMovement(field)) return [];
      return operands.some((each) => each.field === field) ? [field] : [];
    }),
  };
}
