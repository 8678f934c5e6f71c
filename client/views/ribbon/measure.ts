import type { Item } from "./rows.ts";
import { durationInWords, momentInWords } from "./time-words.ts";

/** Two moments and what lies between them; `to` is undefined until the second one is chosen. */
export interface Measure {
  readonly from: number;
  readonly to: number | undefined;
  /** Whose begin or end was chosen last. */
  readonly item: Item;
}

/** Begins a measurement at an item, ends the one that was begun, or begins anew after one that is whole. */
export function measuredWith(before: Measure | undefined, item: Item, near: number): Measure {
  return withMoment(before, item, momentOf(item, near));
}

/** The same where no pointer says which is meant: an item's begin; its end after that, first to end at, then to begin at. */
export function measuredByKey(before: Measure | undefined, item: Item): Measure {
  if (before === undefined || !isSame(before.item, item) || item.from === item.to)
    return withMoment(before, item, item.from);
  const { from, to } = before;
  if ((to ?? from) === item.from) return { from, to: item.to, item };
  const isItself = from === item.from && to === item.to;
  return { from: isItself ? item.to : item.from, to: undefined, item };
}

function withMoment(before: Measure | undefined, item: Item, moment: number): Measure {
  return before === undefined || before.to !== undefined
    ? { from: moment, to: undefined, item }
    : { from: before.from, to: moment, item };
}

/** What is laid out anew has other items. */
function isSame(one: Item, other: Item): boolean {
  return one.row === other.row && one.from === other.from && one.to === other.to;
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
