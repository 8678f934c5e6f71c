import { fieldsOf } from "../../model/layouts/decode.ts";
import type { MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import { movementRange } from "../../model/layouts/values.ts";
import { isRequired, type Observed } from "../found/found-layout.ts";
import type { Axis } from "../inputs/samples.ts";
import type { FoundSlot } from "../report-trial.ts";
import { type Evidence, slotsOf, smallest } from "./evidence.ts";
import type { BitPlace, FaultDraft } from "./fault-draft.ts";
import { bitText, placeText, slotText, wrongWayText } from "./texts.ts";

/** An encoder that clips has to let this much through, or half of what the report carries where that is less. */
export const leastReach = 15;

/** Where an axis is cut off: what is between comes out as it is, what is beyond as the nearer limit. */
export interface Reach {
  readonly lowest: number;
  readonly highest: number;
}

export interface JudgedAxis {
  readonly drafts: readonly FaultDraft[];
  /** Undefined where the axis is at fault. */
  readonly reach: Reach | undefined;
}

/** One movement alone, over all that it may be. */
export function judgeAxis(evidence: Evidence, axis: Axis): JudgedAxis {
  const { layout } = evidence;
  const { field } = axis;
  const observed = (evidence.swept.get(axis) ?? []).filter(({ bytes }) => bytes.length > 0);
  const reach = reachOf(layout, axis, observed);
  const wrong = observed.filter((each) => !isRight(layout, field, each, reach));
  const example = smallest(wrong);
  if (example === undefined) return { drafts: [], reach };
  const inside = wrong.filter(({ values }) => within(values[field.name] ?? 0, field.min, field.max));
  if (inside.length === 0) return { drafts: [clipMissing(layout, field, example)], reach: undefined };
  if (isOpposite(layout, field, observed))
    return { drafts: [direction(layout, field, example)], reach: undefined };
  const misplaced = misplacedBit(evidence, field);
  const lost = lostSign(evidence, field, inside, misplaced);
  const draft =
    lost === undefined ? outOfPlace(layout, field, example, misplaced) : signLost(layout, field, lost);
  return { drafts: [draft], reach: undefined };
}

/** The smallest input that shows it, where small movements come out wrong only if negative, for want of a sign. */
function lostSign(
  { layout, found }: Evidence,
  field: MovementField,
  wrong: readonly Observed[],
  misplaced: Misplaced | undefined,
): Observed | undefined {
  const counts = ({ values }: Observed): number => values[field.name] ?? 0;
  const small = wrong.filter((each) => Math.abs(counts(each)) <= leastReach);
  if (small.length === 0 || small.some((each) => counts(each) > 0)) return undefined;
  const { byte, bit } = placeOfBit(layout, field, field.bits - 1);
  const sign = found[byte]?.[bit];
  const required = layout.bytes[byte]?.[bit];
  if (sign !== undefined && required !== undefined && isRequired(sign, required)) return undefined;
  // Bits that change places within a movement would show in positive ones too.
  const isWithin = misplaced?.is.kind === "movement" && misplaced.is.field === field.name;
  if (misplaced !== undefined && !(isWithin && wrong.every((each) => counts(each) < 0))) return undefined;
  return smallest(small);
}

interface Misplaced {
  readonly place: BitPlace;
  readonly is: FoundSlot;
}

/** What comes out as it went in, around 0. */
function reachOf(layout: ReportLayout, { field, values }: Axis, observed: readonly Observed[]): Reach {
  const came = new Map(observed.map((each) => [each.values[field.name] ?? 0, sent(layout, field, each)]));
  const zero = values.indexOf(0);
  const until = (step: 1 | -1): number => {
    let index = zero;
    while (
      came.get(values[index + step] ?? Number.NaN) === values[index + step] &&
      values[index + step] !== undefined
    )
      index += step;
    return values[index] ?? 0;
  };
  return { lowest: until(-1), highest: until(1) };
}

function sent(layout: ReportLayout, field: MovementField, { bytes }: Observed): number | undefined {
  return fieldsOf(layout, bytes).values[field.name];
}

/** As it is, or cut off at the limits, which have to be far enough; or said to be too large. */
function isRight(
  layout: ReportLayout,
  field: MovementField,
  observed: Observed,
  { lowest, highest }: Reach,
): boolean {
  const value = observed.values[field.name] ?? 0;
  const came = sent(layout, field, observed);
  if (came === value) return true;
  const { min, max } = movementRange(field);
  if (!within(value, min, max) && fieldsOf(layout, observed.bytes).overflow.includes(field.name)) return true;
  if (value > highest) return came === highest && highest >= Math.min(leastReach, max / 2);
  return value < lowest && came === lowest && lowest <= Math.max(-leastReach, min / 2);
}

function within(value: number, min: number, max: number): boolean {
  return value >= min && value <= max;
}

function isOpposite(layout: ReportLayout, field: MovementField, observed: readonly Observed[]): boolean {
  const small = observed.filter(
    ({ values }) => Math.abs(values[field.name] ?? 0) <= -Math.max(field.min, -leastReach) - 1,
  );
  return (
    small.length > 2 &&
    small.every((each) => sent(layout, field, each) === 0 - (each.values[field.name] ?? 0))
  );
}

/** The first bit of the field that follows something else which moves. */
function misplacedBit({ layout, found }: Evidence, field: MovementField): Misplaced | undefined {
  for (const { slot, place } of slotsOf(layout)) {
    if (slot.kind !== "movement" || slot.field !== field.name) continue;
    const is = found[place.byte]?.[place.bit];
    if (is === undefined || isRequired(is, slot)) continue;
    if (is.kind === "button" || (is.kind === "movement" && !is.opposite)) return { place, is };
  }
  return undefined;
}

/** Where a bit of a field has its place in the report. */
function placeOfBit(layout: ReportLayout, { name }: MovementField, fieldBit: number): BitPlace {
  for (const { slot, place } of slotsOf(layout)) {
    if (slot.kind === "movement" && slot.field === name && slot.part === 1 && slot.fieldBit === fieldBit)
      return place;
  }
  return { byte: 0, bit: 0 };
}

function clipMissing(layout: ReportLayout, field: MovementField, { values }: Observed): FaultDraft {
  const { min, max } = movementRange(field);
  return {
    kind: "clip-missing",
    fields: [field.name],
    what: `${field.name} is not clipped to what a ${layout.name} report carries, ${min} to ${max}`,
    values,
    place: placeOfBit(layout, field, 0),
    driver: field.name,
  };
}

function direction(layout: ReportLayout, field: MovementField, { values }: Observed): FaultDraft {
  return {
    kind: field.name === "y" ? "y-direction" : "layout",
    fields: [field.name],
    what: wrongWayText(layout, field),
    values,
    place: placeOfBit(layout, field, 0),
    driver: field.name,
  };
}

function signLost(layout: ReportLayout, field: MovementField, { values }: Observed): FaultDraft {
  return {
    kind: "sign-lost",
    fields: [field.name],
    what: `negative ${field.name} loses its sign`,
    values,
    place: placeOfBit(layout, field, field.bits - 1),
    driver: field.name,
  };
}

function outOfPlace(
  layout: ReportLayout,
  field: MovementField,
  { values }: Observed,
  misplaced: Misplaced | undefined,
): FaultDraft {
  const place = misplaced?.place ?? placeOfBit(layout, field, 0);
  return {
    kind: "layout",
    fields: [field.name],
    what:
      misplaced === undefined
        ? `${field.name} does not come out as it went in`
        : `${placeText(place)} has to be ${bitText(layout.bytes[place.byte]?.[place.bit])} and is ${slotText(misplaced.is)}`,
    values,
    place,
    driver: misplaced === undefined || misplaced.is.kind === "constant" ? field.name : driverOf(misplaced.is),
  };
}

function driverOf(found: FoundSlot) {
  return found.kind === "button" || found.kind === "movement" ? found.field : undefined;
}
