import { fieldsOf } from "../../model/layouts/decode.ts";
import { encodeWholeReport } from "../../model/layouts/encode.ts";
import type { FieldName, MovementName, ReportLayout, Slot } from "../../model/layouts/layout.ts";
import { clamp, type ReportValues } from "../../model/layouts/values.ts";
import type { Observed } from "../found/found-layout.ts";
import { type Axis, fits } from "../inputs/samples.ts";
import { type Evidence, everything, levelAt, saying, slotsOf, smallest } from "./evidence.ts";
import type { BitPlace, FaultDraft } from "./fault-draft.ts";
import type { Reach } from "./movements.ts";
import { bitText, placeText } from "./texts.ts";

/** Bits that something else reaches, in an encoder that is right for each button and each movement by itself. */
export function judgeTogether(evidence: Evidence, reaches: ReadonlyMap<Axis, Reach>): readonly FaultDraft[] {
  const wrong = everything(evidence).flatMap((observed) => {
    const bit = wrongBit(evidence, reaches, observed);
    return bit === undefined ? [] : [{ ...observed, bit }];
  });
  const inside = wrong.filter(({ values }) => fits(values, evidence.axes));
  const example = smallest(inside.length > 0 ? inside : wrong);
  return example === undefined ? [] : [draftOf(evidence, example.values, example.bit)];
}

interface WrongBit {
  readonly slot: Slot;
  readonly place: BitPlace;
}

/** The first bit that is not as it should be, of a report that says what it should not. */
function wrongBit(
  { layout, axes }: Evidence,
  reaches: ReadonlyMap<Axis, Reach>,
  { values, bytes }: Observed,
): WrongBit | undefined {
  if (bytes.length === 0) return undefined;
  const within: { [name in FieldName]?: number | boolean } = { ...values };
  for (const axis of axes) {
    const reach = reaches.get(axis);
    const value = values[axis.field.name] ?? 0;
    if (reach !== undefined) within[axis.field.name] = clamp(value, reach.lowest, reach.highest);
  }
  const right = encodeWholeReport(layout, within as ReportValues);
  for (const each of slotsOf(layout)) {
    const { slot, place } = each;
    if (place.byte >= bytes.length || levelAt(bytes, place) === levelAt(right, place)) continue;
    if (slot.kind === "button") return each;
    // A movement in two parts may be shared out in any way.
    if (slot.kind === "movement" && !rightMovement(layout, slot.field, bytes, within as ReportValues))
      return each;
  }
  return undefined;
}

/** Whether a movement is in the report as it should be. */
function rightMovement(
  layout: ReportLayout,
  name: MovementName,
  bytes: readonly number[],
  values: ReportValues,
): boolean {
  const came = fieldsOf(layout, bytes);
  return came.values[name] === (values[name] ?? 0) || came.overflow.includes(name);
}

function draftOf({ axes }: Evidence, values: ReportValues, { slot, place }: WrongBit): FaultDraft {
  const own = "field" in slot ? slot.field : undefined;
  const others = saying(values).filter((name) => name !== own);
  const mover = others.find((name) => axes.some(({ field }) => field.name === name)) ?? others[0];
  return {
    kind: "layout",
    fields: own === undefined ? [] : [own],
    what: `${placeText(place)} has to be ${bitText(slot)}${mover === undefined ? "" : `, and ${mover} reaches it`}`,
    values,
    place,
    driver: mover ?? own,
  };
}
