import type { MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import { layouts } from "../../model/report-layouts.ts";
import { type Bound, isMovement } from "../subject/operands.ts";

/** All that a movement may be in a trial, in the layout's sense and smallest first; 0 is among them. */
export function movementValues(field: MovementField, bound: Bound): readonly number[] {
  const { bits, signed } = bound.shape;
  const lowest = -(2 ** (bits - 1));
  const highest = -lowest - 1;
  // What an unsigned place holds is taken as two's complement. The lowest value has no opposite of its type.
  const least = bound.operand.negated && (signed || bits < 32) ? lowest + 1 : lowest;
  const own = field.name === "wheel" && bits <= 8 ? wheelValues() : countValues();
  const fitting = own.filter((value) => {
    const given = bound.operand.negated ? -value : value;
    return given >= least && given <= highest;
  });
  return fitting;
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
export function operandsByField(layout: ReportLayout, operands: readonly Bound[]) {
  return {
    movements: layout.movements.flatMap((field) => {
      const bound = operands.find((each) => each.field === field.name);
      return bound === undefined ? [] : [{ field, bound, values: movementValues(field, bound) }];
    }),
    buttons: layout.fields.flatMap((field) => {
      if (isMovement(field)) return [];
      return operands.some((each) => each.field === field) ? [field] : [];
    }),
  };
}
