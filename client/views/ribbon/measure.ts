import type { Item } from "./rows.ts";
import { durationInWords, momentInWords } from "./time-words.ts";

/** Two moments and what lies between them; `to` is undefined until the second one is chosen. */
export interface Measure {
  readonly from: number;
  readonly to: number | undefined;
}

/** Begins a measurement at an item, ends the one that was begun, or begins anew after one that is whole. */
export function measuredWith(before: Measure | undefined, item: Item, near: number): Measure {
  const moment = momentOf(item, near);
  return before === undefined || before.to !== undefined
    ? { from: moment, to: undefined }
    : { from: before.from, to: moment };
}

/** An item's begin or its end, whichever is nearer. */
function momentOf({ from, to }: Item, near: number): number {
  return Math.abs(near - from) <= Math.abs(to - near) ? from : to;
}

/** "53.42 us from 11.2 ms to 11.3 ms; 18.7 kHz as a period" */
export function measureInWords({ from, to }: Measure): string {
  if (to === undefined) return `from ${momentInWords(from)} to ...`;
  const length = Math.abs(to - from);
  const span = `from ${momentInWords(Math.min(from, to))} to ${momentInWords(Math.max(from, to))}`;
  const rate = length === 0 ? "" : `; as a period ${frequency(1e12 / length)}`;
  return `${durationInWords(length)} ${span}${rate}`;
}

function frequency(hertz: number): string {
  const [value, unit] = hertz >= 1000 ? [hertz / 1000, "kHz"] : [hertz, "Hz"];
  return `${Number(value.toPrecision(4))} ${unit}`;
}
