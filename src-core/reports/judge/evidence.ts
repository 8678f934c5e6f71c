import type { ButtonName, FieldName, ReportLayout, Slot } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { Observed } from "../found/found-layout.ts";
import { type Axis, sizeOfInput } from "../inputs/samples.ts";
import type { FoundSlot } from "../report-trial.ts";
import type { BitPlace } from "./fault-draft.ts";

/** All that is known of an encoder when it is judged. */
export interface Evidence {
  readonly layout: ReportLayout;
  readonly axes: readonly Axis[];
  readonly buttons: readonly ButtonName[];
  readonly found: readonly (readonly FoundSlot[])[];
  /** Every set of the buttons, nothing moving. */
  readonly pressed: readonly Observed[];
  /** By axis: one movement at a time. */
  readonly swept: ReadonlyMap<Axis, readonly Observed[]>;
  /** Everything at once. */
  readonly mixed: readonly Observed[];
  /** Reports behind others; none where somebody else may clear the bytes in between. */
  readonly followed: readonly Followed[];
}

/** A report that was sent behind another. */
export interface Followed {
  readonly before: ReportValues;
  readonly values: ReportValues;
  /** As it is behind a reset. */
  readonly alone: readonly number[];
  /** As it is where the firmware goes on. */
  readonly on: readonly number[];
  /** As it is where only the bytes of the report before are left. */
  readonly over: readonly number[];
}

export function everything({ pressed, swept, mixed }: Evidence): readonly Observed[] {
  return [...pressed, ...[...swept.values()].flat(), ...mixed];
}

/** The one with the smallest input, the first of several. */
export function smallest<Tried extends { readonly values: ReportValues }>(
  among: readonly Tried[],
): Tried | undefined {
  let best: Tried | undefined;
  for (const each of among) {
    if (best === undefined || sizeOfInput(each.values) < sizeOfInput(best.values)) best = each;
  }
  return best;
}

/** Every bit of a layout with its place, byte by byte, the highest bit of each first. */
export function* slotsOf(layout: ReportLayout): Generator<{ readonly slot: Slot; readonly place: BitPlace }> {
  for (const [byte, slots] of layout.bytes.entries()) {
    for (let bit = slots.length - 1; bit >= 0; bit -= 1) {
      const slot = slots[bit];
      if (slot !== undefined) yield { slot, place: { byte, bit } };
    }
  }
}

export function levelAt(bytes: readonly number[], { byte, bit }: BitPlace): 0 | 1 {
  return (((bytes[byte] ?? 0) >> bit) & 1) === 1 ? 1 : 0;
}

/** The fields that say something in an input. */
export function saying(values: ReportValues): readonly FieldName[] {
  return (Object.keys(values) as FieldName[]).filter((name) => values[name] !== 0 && values[name] !== false);
}
