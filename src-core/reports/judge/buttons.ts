import type { ButtonName, FieldName } from "../../model/layouts/layout.ts";
import type { FoundSlot } from "../report-trial.ts";
import { type Evidence, levelAt, slotsOf, smallest } from "./evidence.ts";
import type { BitPlace, FaultDraft } from "./fault-draft.ts";
import { placeText, slotText } from "./texts.ts";

/** report/button-map: a button's bit that does not follow that button. Two that changed places are one fault. */
export function judgeButtons(evidence: Evidence): readonly FaultDraft[] {
  const drafts: FaultDraft[] = [];
  const seen = new Map<ButtonName, FoundSlot | undefined>();
  for (const { slot, place } of slotsOf(evidence.layout)) {
    if (slot.kind !== "button") continue;
    const wrong = evidence.pressed.filter(
      ({ values, bytes }) =>
        bytes.length > place.byte &&
        levelAt(bytes, place) !== ((values[slot.field] === true) === slot.activeLow ? 0 : 1),
    );
    // A bit that was set tells who set it.
    const set = wrong.filter(({ bytes }) => levelAt(bytes, place) === 1);
    const example = smallest(set.length > 0 ? set : wrong);
    if (example === undefined) continue;
    const found = evidence.found[place.byte]?.[place.bit];
    const other = found?.kind === "button" && found.field !== slot.field ? found.field : undefined;
    const exchanged = other === undefined ? undefined : seen.get(other);
    seen.set(slot.field, found);
    if (exchanged?.kind === "button" && exchanged.field === slot.field) continue;
    drafts.push({
      kind: "button-map",
      fields: [slot.field],
      what: whatIsWrong(slot.field, place, found, slot.activeLow),
      values: example.values,
      place,
      driver: other ?? driverOf(slot.field, found, slot.activeLow),
    });
  }
  return drafts;
}

/** Whose operand brought the wrong level, or should have brought the right one. */
function driverOf(
  field: ButtonName,
  found: FoundSlot | undefined,
  activeLow: boolean,
): FieldName | undefined {
  if (found?.kind === "button") return field;
  if (found?.kind === "mixed") return found.fields.find((name) => name !== field);
  return found?.kind === "constant" && (found.level === 1) === activeLow ? field : undefined;
}

function whatIsWrong(
  field: ButtonName,
  place: BitPlace,
  found: FoundSlot | undefined,
  activeLow: boolean,
): string {
  const where = placeText(place);
  if (found?.kind === "button" && found.field !== field)
    return `${where} has to be ${field} and is ${found.field}`;
  if (found?.kind === "button") return `${field} is turned over in ${where}`;
  if (found?.kind === "constant") {
    const isDown = (found.level === 1) !== activeLow;
    return isDown
      ? `${field} is always sent as down in ${where}`
      : `${field} is never sent: ${where} is always ${found.level}`;
  }
  if (found?.kind === "movement") return `${where} has to be ${field} and is ${slotText(found)}`;
  const others = found?.kind === "mixed" ? found.fields.filter((name) => name !== field) : [];
  return others.length > 0
    ? `${where} has to be ${field}, and ${others.join(" and ")} reach${others.length > 1 ? "" : "es"} it`
    : `${where} has to be ${field} and does not always follow it`;
}
