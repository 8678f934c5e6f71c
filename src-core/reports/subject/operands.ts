import type { FieldName, MovementName, ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { FieldOperand } from "../../notes/note.ts";
import type { Operand } from "../../notes/values/operand.ts";
import type { DataModel } from "../../reader/types/types.ts";
import { type Cell, integerShape } from "./cell.ts";
import { NotTried } from "./not-tried.ts";
import type { Reach } from "./reach.ts";

/** One `field=operand` of a note with the place that the operand means. */
export interface Bound {
  readonly field: FieldName;
  readonly operand: Operand;
  readonly cell: Cell;
  /** How many bits the place has, and whether they have a sign. */
  readonly shape: { readonly bits: number; readonly signed: boolean; readonly truth: boolean };
}

/** The operands of a note that name fields of its layout; others are told by the notes' own rules. */
export function boundOperands(
  fields: readonly FieldOperand[],
  layout: ReportLayout,
  reach: Reach,
  model: DataModel,
): readonly Bound[] {
  return fields.flatMap(({ field, operand }) => {
    const name = layout.fields.find((each) => each === field.value);
    if (name === undefined) return [];
    const cell = reach.cell(operand.value.path);
    const shape = integerShape(cell, model);
    if (shape === undefined)
      throw new NotTried(`\`${operand.value.path.join(".")}\` is no whole number`, undefined);
    return [{ field: name, operand: operand.value, cell, shape }];
  });
}

export function isMovement(field: FieldName): field is MovementName {
  return field === "x" || field === "y" || field === "wheel";
}

/** What an operand is given for a value of its field; for one bit of a place, 0 or that bit's worth. */
export function operandValue({ field, operand, shape }: Bound, values: ReportValues): number {
  const value = Number(values[field] ?? 0);
  if (!isMovement(field)) {
    const level = (value !== 0) !== operand.negated ? 1 : 0;
    return level * 2 ** (operand.bit ?? 0);
  }
  const own = operand.negated ? -value : value;
  return own < 0 && !shape.signed ? own + 2 ** shape.bits : own;
}

/** What a field's value is where its operand came out so: the opposite of `operandValue`. */
export function fieldValue({ field, operand, shape }: Bound, own: number): number {
  if (!isMovement(field)) {
    const level = operand.bit === undefined ? own !== 0 : Math.floor(own / 2 ** operand.bit) % 2 !== 0;
    return level !== operand.negated ? 1 : 0;
  }
  // An unsigned place that holds a movement holds its two's complement.
  const signed = !shape.signed && own >= 2 ** (shape.bits - 1) ? own - 2 ** shape.bits : own;
  return operand.negated ? 0 - signed : signed;
}

/** The operand as people write it: `dx=-3`. */
export function operandText(bound: Bound, values: ReportValues): string {
  const { operand, shape } = bound;
  const name = operand.path.join(".") + (operand.bit === undefined ? "" : `.${operand.bit}`);
  const own = operandValue(bound, values) / 2 ** (operand.bit ?? 0);
  const shown = isMovement(bound.field) && own >= 2 ** (shape.bits - 1) ? own - 2 ** shape.bits : own;
  return `${name}=${shown}`;
}
