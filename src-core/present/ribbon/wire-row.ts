import type { Time } from "../../bench/time/time.ts";
import type { WireName } from "../../bench/wires/edge.ts";
import type { RecordedEdge } from "../../run-details.ts";
import { levelAtStart } from "../levels.ts";
import type { Place, Row, Stretch, TimeWindow } from "./ribbon.ts";

/** A wire over a window; what is shorter than one and a half of `finest` cannot be seen and makes the wire busy. */
export function wireRow(
  label: WireName,
  edges: readonly RecordedEdge[],
  window: TimeWindow,
  finest: Time,
  placeOf: (place: number | undefined) => Place | undefined,
): Row {
  const stretches: Stretch[] = [];
  let busy: Changing<Stretch> | undefined;
  for (const stretch of levels(label, edges, window, placeOf)) {
    const isBrief = stretch.to - stretch.from < 1.5 * finest && stretch.to < window.to;
    if (!isBrief) {
      stretches.push(stretch);
      busy = undefined;
    } else if (busy === undefined) {
      busy = { ...stretch, level: "busy" };
      stretches.push(busy);
    } else {
      busy.to = stretch.to;
      busy.changes += stretch.changes;
    }
  }
  return { kind: "wire", label, stretches };
}

type Changing<Each> = { -readonly [Key in keyof Each]: Each[Key] };

function levels(
  wire: WireName,
  edges: readonly RecordedEdge[],
  { from, to }: TimeWindow,
  placeOf: (place: number | undefined) => Place | undefined,
): readonly Stretch[] {
  const before = edges.findLast((edge) => edge.wire === wire && edge.time <= from && edge.time < to);
  const inside = edges.filter((edge) => edge.wire === wire && edge.time > from && edge.time < to);
  const first = {
    from,
    level: before?.level ?? levelAtStart(wire, edges),
    changes: before?.time === from ? 1 : 0,
    place: placeOf(before?.place),
  };
  const begun = [
    first,
    ...inside.map(({ time, level, place }) => ({ from: time, level, changes: 1, place: placeOf(place) })),
  ];
  return begun.map((each, index) => ({ ...each, to: begun[index + 1]?.from ?? to }));
}
