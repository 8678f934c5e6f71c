import type {
  Lane,
  Mark,
  Panel,
  Place,
  Row,
  Stretch,
  TimeWindow,
} from "../../../server/language-server/client-messages/runs.ts";
import { durationInWords, momentInWords } from "./time-words.ts";

export const rowHeight = 22;
export const axisHeight = 40;
const lanePadding = 5;
const betweenLanes = 24;

/** Where a lane is drawn, in pixels from the top. */
export interface PlacedLane {
  readonly lane: Lane;
  readonly top: number;
  readonly height: number;
}

export interface PlacedRow {
  readonly row: Row;
  readonly lane: Lane["id"];
  readonly top: number;
}

export function placeLanes({ lanes }: Pick<Panel, "lanes">): readonly PlacedLane[] {
  let top = axisHeight;
  return lanes.map((lane) => {
    const placed = { lane, top, height: Math.max(1, lane.rows.length) * rowHeight + 2 * lanePadding };
    top += placed.height + betweenLanes;
    return placed;
  });
}

export function placeRows(lanes: readonly PlacedLane[]): readonly PlacedRow[] {
  return lanes.flatMap(({ lane, top }) =>
    lane.rows.map((row, index) => ({ row, lane: lane.id, top: top + lanePadding + index * rowHeight })),
  );
}

/** How high all is. */
export function heightOf(lanes: readonly PlacedLane[]): number {
  const last = lanes.at(-1);
  return last === undefined ? axisHeight : last.top + last.height;
}

/** Something that can be chosen: an edge, a frame, a function at work. */
export interface Item extends TimeWindow {
  /** The row's place among all rows. */
  readonly row: number;
  /** In one line. */
  readonly words: string;
  /** The code that caused it. */
  readonly place: Place | undefined;
  /** It is the edge at `from`, not what lasts from there on. */
  readonly isEdge: boolean;
}

/** What can be chosen in a row, in order of time. */
export function itemsOf({ row, lane }: PlacedRow, index: number): readonly Item[] {
  return row.kind === "wire"
    ? row.stretches.flatMap((stretch) => edgeItem(row.label, stretch, index))
    : row.marks.map((mark) => markItem(row.label, lane, mark, index));
}

/** Nothing where the wire does not change. */
function edgeItem(wire: string, { from, to, level, changes, place }: Stretch, row: number): readonly Item[] {
  if (changes === 0) return [];
  const at = `${momentInWords(from)}${placeWords(place)}`;
  if (level === "busy") {
    const often = changes === 1 ? "once" : `${changes} times`;
    const words = `${wire} changes ${often} within ${durationInWords(to - from)}, ${at}`;
    return [{ row, from, to, words, place, isEdge: false }];
  }
  return [
    { row, from, to: from, words: `${wire} ${level === 0 ? "falls" : "rises"}, ${at}`, place, isEdge: true },
  ];
}

function markItem(label: string, lane: Lane["id"], { from, to, detail, place }: Mark, row: number): Item {
  const where = lane === "code" ? "" : `${label}: `;
  return { row, from, to, words: `${where}${detail}${placeWords(place)}`, place, isEdge: false };
}

function placeWords(place: Place | undefined): string {
  return place === undefined ? "" : `, ${place.file}:${place.line}`;
}

/** The row at a height; undefined between rows. */
export function rowAt(rows: readonly PlacedRow[], y: number): number | undefined {
  const index = rows.findIndex(({ top }) => y >= top && y < top + rowHeight);
  return index < 0 ? undefined : index;
}

/** The item nearest to a moment, if it is not further than `reach`: the nearest edge of a wire, else what lasts at that moment. */
export function itemAt(items: readonly Item[], time: number, reach: number): Item | undefined {
  let best: Item | undefined;
  let least = reach;
  for (const item of items) {
    const distance = Math.max(0, item.from - time, time - item.to);
    if (distance <= least && (best === undefined || distance < least)) {
      best = item;
      least = distance;
    }
  }
  return best;
}

/** The next item of a row after a moment, or the last before it. */
export function stepFrom(items: readonly Item[], time: number, by: 1 | -1): Item | undefined {
  return by === 1 ? items.find(({ from }) => from > time) : items.findLast(({ from }) => from < time);
}
