import type { ReportLayout } from "../../../model/layouts/layout.ts";
import { type Axis, agree, axesOf, outOf, scaleOf } from "./axes.ts";
import type { Incoming } from "./incoming.ts";
import type { Part } from "./part.ts";

/** How spoilt reports are taken: left out or in as they should be, or as somebody reads them who ignores parity. */
export type Taking = "careful" | "careless";

/** One axis of one session: the counts in that explain the counts out best. */
export interface Explained {
  readonly axis: Axis;
  readonly in: number;
  readonly out: number;
  readonly agrees: boolean;
}

/**
 * Counts in and out of every axis. Each axis by itself, as the rest of a movement that did not fit into a report may have been
 * forgotten on one axis alone.
 */
export function explain(
  part: Part,
  layout: ReportLayout,
  scale: number,
  taking: Taking,
): readonly Explained[] {
  return axesOf(layout).map((axis) => {
    const out = part.out.reduce((sum, { values }) => sum + outOf(axis, values), 0);
    const found = nearest(possible(part, axis, taking), out / scaleOf(axis, scale));
    return { axis, in: found, out, agrees: agree(axis, found, out, scale) };
  });
}

/** Counts from one number to another. */
interface Range {
  readonly least: number;
  readonly most: number;
}

/** What may have come in, by where what the session carried began. */
function possible(part: Part, axis: Axis, taking: Taking): readonly Range[] {
  const { incoming, early, ofBefore, isCut } = part;
  const ranges: Range[] = [];
  let sums: readonly number[] = [0];
  // The last number of each report's running sum, seen from the end.
  let later: Range = { least: 0, most: 0 };
  for (let first = incoming.length; first >= 0; first -= 1) {
    const report = incoming[first];
    if (report !== undefined) {
      const before = sums;
      sums = withReport(sums, report, axis, taking);
      later = runningRange(later, report, axis, taking);
      // A report of the session before may have been sent in part.
      if (first < ofBefore) ranges.push(rangeOf([...before, ...sums]));
    }
    if (first > early) continue;
    if (isCut) ranges.push(later);
    else for (const each of sums) ranges.push({ least: each, most: each });
  }
  return ranges;
}

function withReport(
  sums: readonly number[],
  report: Incoming,
  axis: Axis,
  taking: Taking,
): readonly number[] {
  const counts = choices(report, axis, taking);
  if (counts.length === 1) return sums.map((each) => each + (counts[0] ?? 0));
  return [...new Set(sums.flatMap((each) => counts.map((more) => each + more)))];
}

/** All that the sums up to some later report may be, one report earlier. */
function runningRange({ least, most }: Range, report: Incoming, axis: Axis, taking: Taking): Range {
  const counts = choices(report, axis, taking);
  return rangeOf([0, ...counts.flatMap((each) => [least + each, most + each])]);
}

/** What a report may have counted for. */
function choices({ values, spoilt }: Incoming, { name }: Axis, taking: Taking): readonly number[] {
  const right = values[name] ?? 0;
  if (spoilt === undefined) return [right];
  return taking === "careful" ? [0, right] : [0, right, spoilt[name] ?? 0];
}

function rangeOf(numbers: readonly number[]): Range {
  return { least: Math.min(...numbers), most: Math.max(...numbers) };
}

function nearest(ranges: readonly Range[], wanted: number): number {
  let best = 0;
  let distance = Number.POSITIVE_INFINITY;
  for (const { least, most } of ranges) {
    const here = wanted < least ? least : wanted > most ? most : Math.trunc(wanted);
    if (Math.abs(here - wanted) >= distance) continue;
    best = here;
    distance = Math.abs(here - wanted);
  }
  return best;
}
