import type { FieldName } from "../../model/layouts/layout.ts";
import type { FaultKind } from "../report-trial.ts";
import { type Evidence, levelAt, slotsOf } from "./evidence.ts";
import type { FaultDraft } from "./fault-draft.ts";
import { placeText } from "./texts.ts";

/**
 * A bit that is not written anew: the array still has it from the report before. What an encoder remembers on purpose,
 * as the rest of a movement, does not come out of the array's old bytes alone.
 */
export function judgeLeftovers({ layout, followed }: Evidence): readonly FaultDraft[] {
  for (const { before, values, alone, on, over } of followed) {
    for (const { slot, place } of slotsOf(layout)) {
      if (slot.kind === "ignored" || slot.kind === "overflow" || place.byte >= alone.length) continue;
      const right = levelAt(alone, place);
      if (levelAt(over, place) === right || levelAt(on, place) === right) continue;
      const fields: readonly FieldName[] = slot.kind === "constant" ? [] : [slot.field];
      const what = `${placeText(place)} keeps what the report before had in it`;
      return [{ kind: kinds[slot.kind], fields, what, values, before, place, driver: undefined }];
    }
  }
  return [];
}

const kinds = { constant: "sync-bit", button: "button-map", movement: "layout" } as const satisfies Readonly<
  Record<string, FaultKind>
>;
