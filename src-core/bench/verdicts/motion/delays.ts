import type { Wanted } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import { agree, axesOf, outOf } from "./axes.ts";
import { type Clicks, pairs } from "./judge-clicks.ts";
import type { Part } from "./part.ts";

/** From an incoming report to the end of the outgoing one that brought it. */
export interface Delay {
  readonly length: Time;
  /** The outgoing report was whole. */
  readonly time: Time;
}

/**
 * Of each report with movement: an outgoing report brings all incoming ones up to the latest that had come when it began and
 * whose sums are those that have gone out. Of each button: its nth change is the nth at the PC.
 */
export function delaysOf(part: Part, first: number, clicks: Clicks, wanted: Wanted): readonly Delay[] {
  const delays: Delay[] = [...pairs(clicks.in, clicks.out)].map(([from, to]) => ({
    length: to.time - from.time,
    time: to.time,
  }));
  const axes = axesOf(wanted.layout);
  const incoming = part.incoming.slice(first);
  /** Sums behind each incoming report, spoilt ones left out. */
  const sums: number[][] = [];
  for (const { values, spoilt } of incoming) {
    const before = sums.at(-1);
    sums.push(
      axes.map(({ name }, axis) => (before?.[axis] ?? 0) + (spoilt === undefined ? (values[name] ?? 0) : 0)),
    );
  }
  const gone = axes.map(() => 0);
  let next = 0;
  for (const { from, time, values } of part.out) {
    for (const [index, axis] of axes.entries()) gone[index] = (gone[index] ?? 0) + outOf(axis, values);
    let end = next;
    for (let index = next; index < incoming.length && (incoming[index]?.time ?? from) < from; index += 1) {
      if (axes.every((axis, each) => agree(axis, sums[index]?.[each] ?? 0, gone[each] ?? 0, wanted.scale)))
        end = index + 1;
    }
    for (const report of incoming.slice(next, end)) {
      if (axes.some(({ name }) => (report.values[name] ?? 0) !== 0))
        delays.push({ length: time - report.time, time });
    }
    next = end;
  }
  return delays;
}
