import type { ButtonName, MovementField, MovementName, ReportLayout } from "./layout.ts";

/** What a report says. Fields that a layout lacks are left out; movements are in counts, in the layout's sense. */
export type ReportValues = { readonly [name in MovementName]?: number } & {
  readonly [name in ButtonName]?: boolean;
};

/** The largest and smallest movement that one report carries: the sum of its parts. */
export function movementRange(field: MovementField): { readonly min: number; readonly max: number } {
  return { min: field.min * field.parts, max: field.max * field.parts };
}

export function clamp(value: number, min: number, max: number): number {
  return Math.min(max, Math.max(min, value));
}

/** What of the movements does not fit into one report of the layout and waits for the next one. */
export function remainder(layout: ReportLayout, values: ReportValues): ReportValues {
  const rest: { [name in MovementName]?: number } = {};
  for (const field of layout.movements) {
    const { min, max } = movementRange(field);
    const value = values[field.name] ?? 0;
    rest[field.name] = value - clamp(value, min, max);
  }
  return rest;
}
