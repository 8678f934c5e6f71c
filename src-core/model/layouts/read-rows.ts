import type { ButtonName, FieldName, LayoutTable, MovementName, ReportLayout, Slot } from "./layout.ts";

const MOVEMENTS: readonly MovementName[] = ["x", "y", "wheel"];
const BUTTONS: readonly ButtonName[] = ["left", "right", "middle", "button4", "button5"];

/** Order in which notes and hovers list the fields. */
const FIELD_ORDER: readonly FieldName[] = [
  "x",
  "y",
  "left",
  "right",
  "middle",
  "wheel",
  "button4",
  "button5",
];

/** Takes the rows of a layout's table apart. */
export function reportLayout(table: LayoutTable): ReportLayout {
  const bytes = table.rows.map((row) => row.trim().split(/\s+/).map(readSlot).reverse());
  const dataBits = bytes[0]?.length === 7 ? 7 : 8;
  const present = new Set(bytes.flat().flatMap((slot) => ("field" in slot ? [slot.field] : [])));
  return { ...table, dataBits, bytes, fields: FIELD_ORDER.filter((field) => present.has(field)) };
}

/** A word that is none of the table's language is an ignored bit. */
function readSlot(word: string): Slot {
  if (word === "0" || word === "1") return { kind: "constant", level: word === "1" ? 1 : 0 };
  const activeLow = word.startsWith("~");
  const button = BUTTONS.find((name) => name === (activeLow ? word.slice(1) : word));
  if (button !== undefined) return { kind: "button", field: button, activeLow };
  const movement = MOVEMENTS.find((name) => word.startsWith(name));
  const rest = movement === undefined ? "" : word.slice(movement.length);
  if (movement !== undefined && rest === "!") return { kind: "overflow", field: movement };
  const place = /^(\d)('?)$/.exec(rest);
  if (movement === undefined || place === null) return { kind: "ignored" };
  return { kind: "movement", field: movement, part: place[2] === "" ? 1 : 2, fieldBit: Number(place[1]) };
}
