import { strokesFor } from "../bench/strokes/from-settings.ts";
import type { Stroke } from "../bench/strokes/stroke.ts";
import { second } from "../bench/time/time.ts";
import type { ButtonName, ReportLayout } from "../model/layouts/layout.ts";
import { quantity } from "../model/quantities.ts";
import { layoutNamed } from "../model/report-layouts.ts";
import type { Settings } from "../notes/settings/settings.ts";
import { givenOf } from "../reports/movement/in-layout.ts";
import { usualMovements } from "../reports/movement/usual-movements.ts";
import type { Movement, OfferedMovement } from "../trial-details.ts";

/** What an encoder or decoder of a layout may be tried with; nothing for a layout that there is not. */
export function movementsFor({ simulate }: Settings, layoutName: string): readonly OfferedMovement[] {
  const layout = layoutNamed(layoutName);
  if (layout === undefined) return [];
  return [
    ...usualMovements(layout),
    ...strokesFor(simulate).flatMap((stroke) => fastestOf(stroke, layout) ?? []),
  ];
}

/** What one report of a mouse at its usual rate has of a stroke where it is fastest; undefined where nothing moves. */
function fastestOf({ name, steps }: Stroke, layout: ReportLayout): OfferedMovement | undefined {
  const report = second / (quantity("ps2.sample-rate")?.typical ?? 1);
  const held = new Set<ButtonName>();
  let fastest: Movement | undefined;
  for (const { over, right, down, press, release } of steps) {
    for (const button of press) held.add(button);
    for (const button of release) held.delete(button);
    const share = over <= report ? 1 : report / over;
    const movement = { right: shareOf(right, share), down: shareOf(down, share), wheel: 0, press: [...held] };
    if (countsOf(movement) > countsOf(fastest)) fastest = movement;
  }
  if (fastest === undefined) return undefined;
  return { given: `${name}, where it is fastest: ${givenOf(layout, fastest)}`, movement: fastest };
}

function shareOf(counts: number, share: number): number {
  // Never -0, which is written otherwise.
  return Math.round(counts * share) + 0;
}

function countsOf(movement: Movement | undefined): number {
  return movement === undefined ? 0 : Math.abs(movement.right) + Math.abs(movement.down);
}
