import type { MovementName, ReportLayout } from "../../../model/layouts/layout.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import { layouts } from "../../../model/report-layouts.ts";

/** A movement that both sides carry. */
export interface Axis {
  readonly name: MovementName;
  /** -1 where the serial layout counts the other way than PS/2. */
  readonly sense: 1 | -1;
}

/** The movements of a serial layout beside those of a PS/2 mouse. */
export function axesOf(layout: ReportLayout): readonly Axis[] {
  return layouts["ps2-wheel"].movements.flatMap(({ name, positive }): Axis[] => {
    const other = layout.movements.find((each) => each.name === name);
    return other === undefined ? [] : [{ name, sense: other.positive === positive ? 1 : -1 }];
  });
}

/** Never -0. */
export function outOf(axis: Axis, values: ReportValues): number {
  return axis.sense * (values[axis.name] ?? 0) + 0;
}

/** Counts out per count in: the declared scale is that of the pointer, a step of the wheel stays one. */
export function scaleOf({ name }: Axis, scale: number): number {
  return name === "wheel" ? 1 : scale;
}

/** Whether counts out are what counts in become: less than one may be kept back where they are scaled. */
export function agree(axis: Axis, counted: number, out: number, scale: number): boolean {
  const each = scaleOf(axis, scale);
  return each === 1 ? counted === out : Math.abs(counted * each - out) < 1;
}
