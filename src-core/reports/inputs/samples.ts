import type { ButtonName, MovementField } from "../../model/layouts/layout.ts";
import { movementRange, type ReportValues } from "../../model/layouts/values.ts";
import { Random } from "../../random.ts";

/** A movement of a trial and all that it may be. */
export interface Axis {
  readonly field: MovementField;
  readonly values: readonly number[];
}

/** Every set of the buttons, nothing moving. */
export function buttonSets(buttons: readonly ButtonName[]): readonly ReportValues[] {
  return Array.from({ length: 2 ** buttons.length }, (_, set) =>
    Object.fromEntries(buttons.flatMap((name, bit) => (((set >> bit) & 1) === 1 ? [[name, true]] : []))),
  );
}

/** One axis over all its values, small ones first, all else at rest. */
export function sweep({ field, values }: Axis): readonly ReportValues[] {
  const outwards = [...values].sort((a, b) => Math.abs(a) - Math.abs(b));
  return outwards.map((value) => ({ [field.name]: value }));
}

/** Pairs of reports, one behind the other: everything that is sent goes back to rest, or comes out of it. */
export function successions(
  axes: readonly Axis[],
  buttons: readonly ButtonName[],
): readonly { readonly before: ReportValues; readonly values: ReportValues }[] {
  const one: readonly ReportValues[] = [
    ...buttons.map((name) => ({ [name]: true })),
    // All bits of -1 are set.
    ...axes.map(({ field }) => ({ [field.name]: -1 })),
  ];
  return one.flatMap((values) => [
    { before: values, values: {} },
    { before: {}, values },
  ]);
}

const combinations = 240;
const seed = 1;

/** Everything at once: the edges of every pair of axes, then numbers drawn from a fixed seed. */
export function mixtures(axes: readonly Axis[], buttons: readonly ButtonName[]): readonly ReportValues[] {
  const random = new Random(seed);
  const pressed = (): ReportValues =>
    Object.fromEntries(buttons.flatMap((name) => (random.between(0, 1) === 1 ? [[name, true]] : [])));
  const mixed: ReportValues[] = [];
  for (const [index, one] of axes.entries()) {
    for (const other of axes.slice(index + 1)) {
      for (const a of edgesOf(one)) {
        for (const b of edgesOf(other))
          mixed.push({ ...pressed(), [one.field.name]: a, [other.field.name]: b });
      }
    }
  }
  for (let count = 0; count < combinations; count += 1) {
    const movements = axes.map(({ field, values }) => [
      field.name,
      values[random.between(0, values.length - 1)] ?? 0,
    ]);
    mixed.push({ ...pressed(), ...Object.fromEntries(movements) });
  }
  return mixed;
}

function edgesOf({ field, values }: Axis): readonly number[] {
  const { min, max } = movementRange(field);
  const wanted = [values[0], min, min + 1, -65, -64, -63, -1, 0, 1, 63, 64, 65, max - 1, max, values.at(-1)];
  return [...new Set(wanted)].filter((value) => value !== undefined && values.includes(value)) as number[];
}

/** Whether every movement fits into what one report can say. */
export function fits(
  values: ReportValues,
  axes: readonly Axis[],
  within = Number.POSITIVE_INFINITY,
): boolean {
  return axes.every(({ field }) => {
    const { min, max } = movementRange(field);
    const value = values[field.name] ?? 0;
    return value >= Math.max(min, -within) && value <= Math.min(max, within);
  });
}

/** How much there is to understand in an input: the smaller, the better an example. */
export function sizeOfInput(values: ReportValues): number {
  return Object.values(values).reduce<number>(
    (sum, value) => sum + (typeof value === "number" ? Math.abs(value) : value ? 0.5 : 0),
    0,
  );
}
