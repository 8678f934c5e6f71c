import { fits } from "../inputs/samples.ts";
import { type Evidence, everything, levelAt, saying, slotsOf, smallest } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";
import { placeText } from "./texts.ts";

/** report/sync-bit: bits that never change in the layout, missing or reached by something else; one for each byte. */
export function judgeConstants(evidence: Evidence): readonly FaultDraft[] {
  const inRange = everything(evidence).filter(({ values }) => fits(values, evidence.axes));
  const drafts = new Map<number, FaultDraft>();
  for (const { slot, place } of slotsOf(evidence.layout)) {
    if (slot.kind !== "constant" || drafts.has(place.byte)) continue;
    const wrong = inRange.filter(
      ({ bytes }) => bytes.length > place.byte && levelAt(bytes, place) !== slot.level,
    );
    const example = smallest(wrong);
    if (example === undefined) continue;
    const [driver] = saying(example.values);
    drafts.set(place.byte, {
      kind: "sync-bit",
      fields: driver === undefined ? [] : [driver],
      what: `${placeText(place)} has to be ${slot.level}${driver === undefined ? "" : `, and ${driver} reaches it`}`,
      values: example.values,
      place,
      driver,
    });
  }
  return [...drafts.values()];
}
