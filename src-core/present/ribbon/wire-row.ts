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
  for (const stretch of levels(label, edges, window, placeOf)) {
    const isBrief = stretch.to - stretch.from < 1.5 * finest && stretch.to < window.to;
    const last = stretches.at(-1);
    if (!isBrief) stretches.push(stretch);
    else if (last?.level === "busy")
      stretches[stretches.length - 1] = { ...last, to: stretch.to, changes: last.changes + stretch.changes };
    else stretches.push({ ...stretch, level: "busy" });
  }
  return { kind: "wire", label, stretches };
}

function levels(
  wire: WireName,
  edges: readonly RecordedEdge[],
  { from, to }: TimeWindow,
  placeOf: (place: number | undefined) => Place | undefined,
): readonly Stretch[] {
  const own = edges.filter((edge) => edge.wire === wire && edge.time < to);
  const before = own.filter(({ time }) => time <= from).at(-1);
  const inside = own.filter(({ time }) => time > from);
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
