import type { ButtonName, FieldName, MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { Axis } from "../inputs/samples.ts";
import { smallest } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";
import { wrongWayText } from "./texts.ts";

/** A report and what a decoder made of it; buttons are 0 or 1. */
export interface Decoded {
  readonly values: ReportValues;
  readonly came: ReadonlyMap<FieldName, number>;
}

/** What is wrong with a decoder: each field that does not come out as the report says it, once. */
export function judgeDecoder(
  layout: ReportLayout,
  axes: readonly Axis[],
  buttons: readonly ButtonName[],
  decoded: readonly Decoded[],
): readonly FaultDraft[] {
  const drafts: FaultDraft[] = [];
  for (const { field } of axes) {
    const wrong = decoded.filter((each) => isWrong(field.name, each));
    const example = smallest(wrong);
    if (example !== undefined) drafts.push(movementFault(layout, field, decoded, wrong, example));
  }
  const exchanged = new Set<FieldName>();
  for (const field of buttons) {
    const example = smallest(decoded.filter((each) => isWrong(field, each)));
    if (example === undefined || exchanged.has(field)) continue;
    const draft = buttonFault(field, buttons, decoded, example);
    for (const other of draft.fields) exchanged.add(other);
    drafts.push({ ...draft, fields: [field] });
  }
  return drafts;
}

function expected(field: FieldName, { values }: Decoded): number {
  return Number(values[field] ?? 0);
}

function isWrong(field: FieldName, decoded: Decoded): boolean {
  return decoded.came.get(field) !== expected(field, decoded);
}

function movementFault(
  layout: ReportLayout,
  field: MovementField,
  decoded: readonly Decoded[],
  wrong: readonly Decoded[],
  { values }: Decoded,
): FaultDraft {
  const { name } = field;
  const draft = { fields: [name], values, place: undefined, driver: name };
  const came = (each: Decoded): number => each.came.get(name) ?? 0;
  const alone = decoded.filter((each) => Object.keys(each.values).every((key) => key === name));
  const opposite = alone.filter((each) => came(each) === 0 - expected(name, each));
  if (alone.length > 2 && opposite.length >= alone.length - 1) {
    const what = wrongWayText(layout, field);
    return { ...draft, kind: name === "y" ? "y-direction" : "layout", what };
  }
  const follows = decoded.some(
    (each) => expected(name, each) === 0 && came(each) !== 0 && Object.keys(each.values).length > 0,
  );
  const positiveWrong = wrong.some(
    (each) => expected(name, each) > 0 && Math.abs(expected(name, each)) <= 127,
  );
  if (!follows && !positiveWrong) return { ...draft, kind: "sign-lost", what: `the sign of ${name} is lost` };
  return { ...draft, kind: "layout", what: `${name} does not come out as the report says it` };
}

function buttonFault(
  field: ButtonName,
  buttons: readonly ButtonName[],
  decoded: readonly Decoded[],
  { values }: Decoded,
): FaultDraft {
  const other = buttons.find(
    (each) => each !== field && decoded.every((one) => one.came.get(field) === expected(each, one)),
  );
  const isOver = decoded.every((one) => one.came.get(field) === 1 - expected(field, one));
  const what =
    other !== undefined
      ? `${field} follows ${other}`
      : isOver
        ? `${field} is turned over`
        : `${field} does not come out as the report says it`;
  const isExchanged =
    other !== undefined && decoded.every((one) => one.came.get(other) === expected(field, one));
  const fields = isExchanged ? [field, other] : [field];
  return { kind: "button-map", fields, what, values, place: undefined, driver: field };
}
