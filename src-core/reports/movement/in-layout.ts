import type { FieldName, MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import type { ReportValues } from "../../model/layouts/values.ts";
import type { Movement } from "../../trial-details.ts";
import { isMovement } from "../subject/operands.ts";

/** A movement as fields of a layout; of the fields that are not named, nothing. */
export function valuesOf(
  layout: ReportLayout,
  named: ReadonlySet<FieldName>,
  movement: Movement,
): ReportValues {
  const movements = layout.movements.map((field) => [field.name, countsOf(field, movement)] as const);
  const buttons = layout.fields.flatMap((field) =>
    !isMovement(field) && movement.press.includes(field) ? [[field, true] as const] : [],
  );
  return Object.fromEntries([...movements, ...buttons].filter(([field]) => named.has(field)));
}

function countsOf({ positive }: MovementField, { right, down, wheel }: Movement): number {
  switch (positive) {
    case "right":
      return right;
    case "down":
      return down;
    case "up":
      return 0 - down;
    case "towards the user":
      return wheel;
  }
}

/** What a report of the layout can say of a movement, in words. */
export function givenOf(layout: ReportLayout, movement: Movement): string {
  return movementText(layout, valuesOf(layout, new Set(layout.fields), movement));
}

/** What a report says, as a hand would say it: `right 12 down 5, left pressed`; `nothing` for one at rest. */
export function movementText(layout: ReportLayout, values: ReportValues): string {
  const moved = layout.movements.flatMap((field) => {
    const counts = values[field.name] ?? 0;
    return counts === 0
      ? []
      : [`${wordFor(field, counts)} ${wordFor(field, counts) === "wheel" ? counts : Math.abs(counts)}`];
  });
  const pressed = layout.fields.filter((field) => !isMovement(field) && values[field] === true);
  const parts = [moved.join(" "), pressed.length === 0 ? "" : `${pressed.join(" and ")} pressed`];
  return parts.filter((part) => part !== "").join(", ") || "nothing";
}

function wordFor({ positive }: MovementField, counts: number): string {
  const isPositive = counts > 0;
  switch (positive) {
    case "right":
      return isPositive ? "right" : "left";
    case "down":
      return isPositive ? "down" : "up";
    case "up":
      return isPositive ? "up" : "down";
    case "towards the user":
      return "wheel";
  }
}
