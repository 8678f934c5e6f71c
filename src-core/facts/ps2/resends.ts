import { integerOf, type Value } from "../walk/values.ts";
import type { PathItem, SendItem } from "./sending-paths.ts";

/**
 * What a call does with the byte that it is given: where it sends that again and again, the mouse did not take it before. The
 * last time is the one on which all goes well, and what was waited for in between is over by then.
 */
export function sentOnce(items: PathItem[], given: readonly Value[]): PathItem[] {
  let last: SendItem | undefined;
  let once: PathItem[] | undefined;
  for (const [index, item] of items.entries()) {
    if (item.kind !== "send") {
      once?.push(item);
      continue;
    }
    const before = last;
    last = item;
    if (before !== undefined && given.some((value) => isByte(value, item) && isByte(value, before))) {
      once ??= items.slice(0, index);
      once.length = once.lastIndexOf(before);
      last = { ...item, afterUnknown: before.afterUnknown };
    }
    once?.push(last);
  }
  return once ?? items;
}

function isByte(value: Value, { byte, value: sent }: SendItem): boolean {
  const number = integerOf(value);
  if (byte !== undefined) return number !== undefined && (number & 0xff) === byte;
  return value.from !== undefined && value.from === sent?.from;
}
