import type { SerialReport } from "../../pcs/reports/report-receiver.ts";
import type { Wanted } from "../../run-record.ts";
import { agree, axesOf, outOf } from "./axes.ts";
import type { Incoming } from "./incoming.ts";
import { type Clicks, pairs } from "./judge-clicks.ts";
import type { Part } from "./part.ts";

/** A report of the mouse, and the one that brought what it says to the PC. */
export interface Carried {
  readonly incoming: Incoming;
  readonly outgoing: SerialReport;
}

/**
 * Of each report with movement: an outgoing report brings all incoming ones up to the latest that could be read when it began and
 * whose sums are those that have gone out, but for those whose sums had gone out before: they were taken back by the next
 * movement, or came to less than a count where counts are scaled. Of each button: its nth change is the nth at the PC. A report
 * that says several things is there for each of them.
 */
export function carriedBy(part: Part, first: number, clicks: Clicks, wanted: Wanted): readonly Carried[] {
  return [...clicksCarried(part, clicks), ...movementsCarried(part, first, wanted)];
}

function clicksCarried(part: Part, clicks: Clicks): readonly Carried[] {
  return [...pairs(clicks.in, clicks.out)].flatMap(([from, to]): Carried[] => {
    const incoming = part.incoming.find(({ time }) => time === from.time);
    const outgoing = part.out.find(({ time }) => time === to.time);
    return incoming === undefined || outgoing === undefined ? [] : [{ incoming, outgoing }];
  });
}

function movementsCarried(part: Part, from: number, wanted: Wanted): readonly Carried[] {
  const carried: Carried[] = [];
  const axes = axesOf(wanted.layout);
  const incoming = part.incoming.slice(from);
  /** Sums behind each incoming report, spoilt ones left out. */
  const sums: number[][] = [];
  for (const { values, spoilt } of incoming) {
    const before = sums.at(-1);
    sums.push(
      axes.map(({ name }, axis) => (before?.[axis] ?? 0) + (spoilt === undefined ? (values[name] ?? 0) : 0)),
    );
  }
  const gone = axes.map(() => 0);
  const hasGone = (index: number): boolean =>
    axes.every((axis, each) => agree(axis, sums[index]?.[each] ?? 0, gone[each] ?? 0, wanted.scale));
  let next = 0;
  for (const outgoing of part.out) {
    const { from: began, values } = outgoing;
    const readable: number[] = [];
    for (let index = next; (incoming[index]?.readableAt ?? began) < began; index += 1) readable.push(index);
    const settled = readable.filter(hasGone);
    for (const [index, axis] of axes.entries()) gone[index] = (gone[index] ?? 0) + outOf(axis, values);
    const last = readable.findLast(hasGone);
    if (last === undefined) continue;
    const first = (settled.findLast((index) => index < last) ?? next - 1) + 1;
    for (const report of incoming.slice(first, last + 1)) {
      if (axes.some(({ name }) => (report.values[name] ?? 0) !== 0))
        carried.push({ incoming: report, outgoing });
    }
    next = last + 1;
  }
  return carried;
}
