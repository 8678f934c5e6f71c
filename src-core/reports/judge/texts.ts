import type { MovementField, ReportLayout, Slot } from "../../model/layouts/layout.ts";
import type { FoundSlot } from "../report-trial.ts";
import type { BitPlace } from "./fault-draft.ts";

export function placeText({ byte, bit }: BitPlace): string {
  return `bit ${bit} of byte ${byte + 1}`;
}

/** What a layout wants in a bit. */
export function bitText(slot: Slot | undefined): string {
  if (slot?.kind === "movement") return `${slot.field}${slot.fieldBit}`;
  return slot?.kind === "button" ? slot.field : "something else";
}

/** As the rows of a layout's table say it. */
export function slotText(found: FoundSlot): string {
  switch (found.kind) {
    case "constant":
      return String(found.level);
    case "button":
      return `${found.activeLow ? "~" : ""}${found.field}`;
    case "movement":
      return `${found.inverted ? "~" : ""}${found.opposite ? "-" : ""}${found.field}${found.fieldBit}`;
    case "mixed":
      return found.fields.length === 0 ? "?" : found.fields.join("+");
  }
}

export function wrongWayText({ name: layout }: ReportLayout, { name, positive }: MovementField): string {
  return `${name} counts the wrong way: in a ${layout} report it grows ${directions[positive]}`;
}

const directions = {
  right: "to the right",
  up: "upwards",
  down: "downwards",
  "towards the user": "towards the user",
} as const;
