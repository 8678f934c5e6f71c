import type { ReportLayout, Slot } from "./layout.ts";

/** How a receiver tells the first byte of a report. */
export interface Synchronisation {
  /** A byte `b` may be a first one when `(b & mask) === value`. */
  readonly mask: number;
  readonly value: number;
  /** Whether no other byte of the layout can pass the same test. */
  readonly unambiguous: boolean;
}

/** Bits of a byte that never change. */
export interface ConstantBits {
  readonly mask: number;
  readonly value: number;
}

function constantBits(slots: readonly Slot[]): ConstantBits {
  let mask = 0;
  let value = 0;
  for (const [bit, slot] of slots.entries()) {
    if (slot.kind !== "constant") continue;
    mask |= 1 << bit;
    value |= slot.level << bit;
  }
  return { mask, value };
}

/** The test follows from the constant bits of the layout's first byte. */
export function synchronisation(layout: ReportLayout): Synchronisation {
  const [first = [], ...others] = layout.bytes;
  const { mask, value } = constantBits(first);
  const unambiguous = others.every((slots) => {
    const other = constantBits(slots);
    return (other.mask & mask & (other.value ^ value)) !== 0;
  });
  return { mask, value, unambiguous };
}
