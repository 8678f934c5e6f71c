import { fieldsOf } from "../../model/layouts/decode.ts";
import { clamp } from "../../model/layouts/values.ts";
import type { Observed } from "../found/found-layout.ts";
import { type Axis, fits } from "../inputs/samples.ts";
import { type Evidence, placeText, saying, slotsOf, smallest } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";
import { placeOfBit, type Reach } from "./movements.ts";

/** What only shows when several things happen at once, in an encoder that is right for each alone. */
export function judgeTogether(evidence: Evidence, reaches: ReadonlyMap<Axis, Reach>): readonly FaultDraft[] {
  const wrong = evidence.mixed.flatMap((observed) => {
    const draft = wrongIn(evidence, reaches, observed);
    return draft === undefined ? [] : [{ ...observed, draft }];
  });
  const inside = wrong.filter(({ values }) => fits(values, evidence.axes));
  const example = smallest(inside.length > 0 ? inside : wrong);
  const found = wrong.find((each) => each === example);
  return found === undefined ? [] : [found.draft];
}

function wrongIn(
  { layout, axes }: Evidence,
  reaches: ReadonlyMap<Axis, Reach>,
  { values, bytes }: Observed,
): FaultDraft | undefined {
  const came = fieldsOf(layout, bytes);
  for (const axis of axes) {
    const { field } = axis;
    const reach = reaches.get(axis);
    const value = values[field.name] ?? 0;
    if (reach === undefined || came.overflow.includes(field.name)) continue;
    if (came.values[field.name] === clamp(value, reach.lowest, reach.highest)) continue;
    const others = saying(values).filter((name) => name !== field.name);
    return {
      kind: "layout",
      fields: [field.name],
      what: `${field.name} is changed by ${others.join(" and ")}`,
      values,
      place: placeOfBit(layout, field, 0),
      driver: field.name,
    };
  }
  for (const { slot, place } of slotsOf(layout)) {
    if (slot.kind !== "button" || place.byte >= bytes.length) continue;
    if (came.values[slot.field] === (values[slot.field] === true)) continue;
    const [mover] = saying(values).filter((name) => axes.some(({ field }) => field.name === name));
    return {
      kind: "layout",
      fields: [slot.field],
      what: `${placeText(place)} has to be ${slot.field}${mover === undefined ? "" : `, and ${mover} reaches it`}`,
      values,
      place,
      driver: mover ?? slot.field,
    };
  }
  return undefined;
}
