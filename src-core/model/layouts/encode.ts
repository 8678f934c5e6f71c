import type { MovementField, ReportLayout, Slot } from "./layout.ts";
import { clamp, movementRange, type ReportValues } from "./values.ts";

/**
 * The bytes of one report. Missing values are 0 and up. A movement that does not fit is clipped to what does
 * (and flagged, where the layout has a flag); `remainder` tells the rest. An optional byte is left out while its
 * button is up; `encodeWholeReport` sends it.
 */
export function encodeReport(layout: ReportLayout, values: ReportValues): readonly number[] {
  const bytes = encodeWholeReport(layout, values);
  const { optionalByte } = layout;
  if (optionalByte === undefined) return bytes;
  return saysSomething(layout.bytes[optionalByte] ?? [], values) ? bytes : bytes.slice(0, optionalByte);
}

/** The bytes of one report with the optional byte, as it is sent once more when the middle button is let go. */
export function encodeWholeReport(layout: ReportLayout, values: ReportValues): readonly number[] {
  return layout.bytes.map((slots) =>
    slots.reduce((byte, slot, bit) => byte | (level(slot, layout, values) << bit), 0),
  );
}

function saysSomething(slots: readonly Slot[], values: ReportValues): boolean {
  return slots.some((slot) => slot.kind === "button" && values[slot.field] === true);
}

function level(slot: Slot, layout: ReportLayout, values: ReportValues): 0 | 1 {
  switch (slot.kind) {
    case "constant":
      return slot.level;
    case "ignored":
      return 0;
    case "button":
      return (values[slot.field] === true) === slot.activeLow ? 0 : 1;
    case "movement": {
      const field = layout.movements.find((each) => each.name === slot.field);
      if (field === undefined) return 0;
      const value = part(field, values[slot.field] ?? 0, slot.part);
      return ((value >> slot.fieldBit) & 1) === 1 ? 1 : 0;
    }
    case "overflow": {
      const field = layout.movements.find((each) => each.name === slot.field);
      return field !== undefined && overflows(field, values[slot.field] ?? 0) ? 1 : 0;
    }
  }
}

/** The first part takes what fits, the second what is left. */
function part(field: MovementField, value: number, which: 1 | 2): number {
  const first = clamp(value, field.min, field.max);
  return which === 1 ? first : clamp(value - first, field.min, field.max);
}

function overflows(field: MovementField, value: number): boolean {
  const { min, max } = movementRange(field);
  return value < min || value > max;
}
