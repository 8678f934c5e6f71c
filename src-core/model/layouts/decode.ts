import type { ButtonName, MovementName, ReportLayout } from "./layout.ts";
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
  const sums = new Map<string, number>();
  const buttons = new Map<ButtonName, boolean>();
  const overflow: MovementName[] = [];
  for (const [index, byte] of bytes.entries()) {
    for (const [bit, slot] of (layout.bytes[index] ?? []).entries()) {
      const level = ((byte >> bit) & 1) === 1 ? 1 : 0;
      switch (slot.kind) {
        case "constant":
          if (level !== slot.level) return { kind: "constant-bit", byte: index, bit, expected: slot.level };
          break;
        case "ignored":
          break;
        case "button":
          buttons.set(slot.field, (level === 1) !== slot.activeLow);
          break;
        case "movement": {
          const key = `${slot.field}${slot.part}`;
          sums.set(key, (sums.get(key) ?? 0) + level * 2 ** slot.fieldBit);
          break;
        }
        case "overflow":
          if (level === 1) overflow.push(slot.field);
          break;
      }
    }
  }
  const values: { -readonly [field in keyof ReportValues]: ReportValues[field] } = {};
  for (const { name, bits } of layout.movements) {
    const parts = [sums.get(`${name}1`), sums.get(`${name}2`)].filter((each) => each !== undefined);
    if (parts.length > 0) values[name] = parts.reduce((sum, raw) => sum + signed(raw, bits), 0);
  }
  for (const [field, down] of buttons) values[field] = down;
  return { kind: "report", values, overflow };
}

/** Two's complement of `bits` bits. */
function signed(raw: number, bits: number): number {
  return raw >= 2 ** (bits - 1) ? raw - 2 ** bits : raw;
}
