import type { MovementName, ReportLayout } from "./layout.ts";
import type { ReportValues } from "./values.ts";

/** A report taken apart, or the first byte that cannot belong to one. */
export type DecodedReport =
  | { readonly kind: "report"; readonly values: ReportValues; readonly overflow: readonly MovementName[] }
  | { readonly kind: "length"; readonly expected: number; readonly got: number }
  | { readonly kind: "constant-bit"; readonly byte: number; readonly bit: number; readonly expected: 0 | 1 };

/**
 * Takes a report apart. Fields of an optional byte that is missing are left out, since such a report says
 * nothing about them. Bits above the layout's data bits are not looked at.
 */
export function decodeReport(layout: ReportLayout, bytes: readonly number[]): DecodedReport {
  const whole = layout.bytes.length;
  if (bytes.length !== whole && bytes.length !== layout.optionalByte) {
    return { kind: "length", expected: layout.optionalByte ?? whole, got: bytes.length };
  }
  for (const [index, byte] of bytes.entries()) {
    for (const [bit, slot] of (layout.bytes[index] ?? []).entries()) {
      if (slot.kind === "constant" && ((byte >> bit) & 1) !== slot.level)
        return { kind: "constant-bit", byte: index, bit, expected: slot.level };
    }
  }
  return { kind: "report", ...fieldsOf(layout, bytes) };
}

/**
 * What the bits of the fields say, constant ones not looked at. Fields of bytes that are missing are left out; of a
 * movement in two parts, what is there counts.
 */
export function fieldsOf(
  layout: ReportLayout,
  bytes: readonly number[],
): { readonly values: ReportValues; readonly overflow: readonly MovementName[] } {
  const sums = new Map<string, number>();
  const values: { -readonly [field in keyof ReportValues]: ReportValues[field] } = {};
  const overflow: MovementName[] = [];
  for (const [index, byte] of bytes.entries()) {
    for (const [bit, slot] of (layout.bytes[index] ?? []).entries()) {
      const level = (byte >> bit) & 1;
      if (slot.kind === "button") values[slot.field] = (level === 1) !== slot.activeLow;
      if (slot.kind === "overflow" && level === 1) overflow.push(slot.field);
      if (slot.kind !== "movement") continue;
      const key = `${slot.field}${slot.part}`;
      sums.set(key, (sums.get(key) ?? 0) + level * 2 ** slot.fieldBit);
    }
  }
  for (const { name, bits } of layout.movements) {
    const parts = [sums.get(`${name}1`), sums.get(`${name}2`)].filter((each) => each !== undefined);
    if (parts.length > 0) values[name] = parts.reduce((sum, raw) => sum + signed(raw, bits), 0);
  }
  return { values, overflow };
}

/** Two's complement of `bits` bits. */
function signed(raw: number, bits: number): number {
  return raw >= 2 ** (bits - 1) ? raw - 2 ** bits : raw;
}
