import type { Flag, Lane, Panel, Thread } from "../ribbon/ribbon.ts";
import { drawRow } from "./draw-row.ts";
import { at, element, label, type Markup, text } from "./element.ts";
import { type Scale, scaleOf } from "./scale.ts";

/** What a panel takes of the picture. */
export interface Drawn {
  readonly markup: Markup;
  readonly height: number;
}

const rowHeight = 24;
const lanePadding = 5;
const betweenLanes = 26;
const titleHeight = 22;
const axisHeight = 24;

interface PlacedLane {
  readonly lane: Lane;
  readonly top: number;
  readonly height: number;
}

/** A panel from `top` on, its time axis from `left` to `right`; names of lanes and rows stand left of that. */
export function drawPanel(
  panel: Panel,
  name: string,
  top: number,
  edge: number,
  left: number,
  right: number,
): Drawn {
  const scale = scaleOf(panel, left, right);
  const axis = top + titleHeight + axisHeight;
  const lanes = placed(panel.lanes, axis);
  const last = lanes.at(-1);
  const bottom = (last?.top ?? axis) + (last?.height ?? 0);
  const parts = [
    label(edge, top + 14, "heading", panel.title),
    ...lanes.map((lane) => drawLane(lane, edge, right)),
    ...drawAxis(panel, scale, axis, bottom),
    ...drawThreads(panel.threads, name, scale, lanes),
    ...lanes.flatMap(({ lane, top: from }) =>
      lane.rows.map((row, index) =>
        drawRow(row, lane.id, scale, { top: rowTop(from, index), height: rowHeight }),
      ),
    ),
    ...panel.flags.map((flag) => drawFlag(flag, scale, axis, bottom)),
  ];
  return { markup: element("g", {}, ...parts), height: bottom - top };
}

function placed(lanes: readonly Lane[], top: number): readonly PlacedLane[] {
  let next = top;
  return lanes.map((lane) => {
    const from = next;
    const height = Math.max(1, lane.rows.length) * rowHeight + 2 * lanePadding;
    next = from + height + betweenLanes;
    return { lane, top: from, height };
  });
}

function rowTop(laneTop: number, row: number): number {
  return laneTop + lanePadding + row * rowHeight;
}

const nameWidth = 26;
const labelGap = 10;

function drawLane({ lane, top, height }: PlacedLane, edge: number, right: number): Markup {
  const box = { x: at(edge), y: at(top), width: at(right - edge), height: at(height), rx: 5 };
  const x = edge + 17;
  const y = top + height / 2;
  const name = element(
    "text",
    {
      class: `lane name-${lane.id}`,
      "text-anchor": "middle",
      transform: `rotate(-90 ${at(x)} ${at(y)})`,
      x: at(x),
      y: at(y),
    },
    text(lane.title),
  );
  const labels = lane.rows.map((row, index) =>
    label(edge + nameWidth + 96, rowTop(top, index) + rowHeight / 2 + 4, "row soft", row.label),
  );
  return element("g", {}, element("rect", { class: `lane-${lane.id}`, ...box }), name, ...labels);
}

/** Where the time axis begins, from the panel's edge on. */
export const axisInset = nameWidth + 96 + labelGap;

function drawAxis({ ticks }: Panel, scale: Scale, axis: number, bottom: number): readonly Markup[] {
  const lines = ticks.map(({ time }) => `M${at(scale.x(time))} ${at(axis - 5)}V${at(bottom)}`).join("");
  return [
    element("path", { class: "grid", d: `M${at(scale.left)} ${at(axis - 5)}H${at(scale.right)}${lines}` }),
    ...ticks.map(({ time, label: words }) => label(scale.x(time), axis - 9, "tick soft", words)),
  ];
}

/** Bands from the last row of the first lane to the first row of the last, as wide as the reports at their ends. */
function drawThreads(
  threads: readonly Thread[],
  name: string,
  scale: Scale,
  lanes: readonly PlacedLane[],
): readonly Markup[] {
  const [first] = lanes;
  const last = lanes.at(-1);
  if (threads.length === 0 || first === undefined || last === undefined) return [];
  const from = first.top + first.height - lanePadding - 3;
  const to = last.top + lanePadding + 3;
  const gradient = (id: string, top: string) =>
    element(
      "linearGradient",
      { id, gradientUnits: "userSpaceOnUse", x1: 0, x2: 0, y1: at(from), y2: at(to) },
      element("stop", { class: top, offset: 0 }),
      element("stop", { class: "end", offset: 1 }),
    );
  const slowestLast = [...threads].sort((a, b) => Number(a.isSlowest) - Number(b.isSlowest));
  return [
    element("defs", {}, gradient(`thread-${name}`, "top"), gradient(`slowest-${name}`, "slow-top")),
    ...slowestLast.map(({ incoming, outgoing, detail, isSlowest }) =>
      element(
        "path",
        {
          class: isSlowest ? "slowest" : "thread",
          fill: `url(#${isSlowest ? "slowest" : "thread"}-${name})`,
          d: band(scale, [incoming.from, incoming.to], from, [outgoing.from, outgoing.to], to),
        },
        element("title", {}, text(detail)),
      ),
    ),
  ];
}

const thinnest = 1.4;

function band(
  scale: Scale,
  above: readonly [number, number],
  top: number,
  below: readonly [number, number],
  bottom: number,
): string {
  const ends = ([from, to]: readonly [number, number]): readonly [number, number] => {
    const left = scale.x(from);
    return [left, Math.max(left + thinnest, scale.x(to))];
  };
  const [a, b] = ends(above);
  const [c, d] = ends(below);
  const middle = at((top + bottom) / 2);
  return (
    `M${at(a)} ${at(top)}H${at(b)}C${at(b)} ${middle} ${at(d)} ${middle} ${at(d)} ${at(bottom)}` +
    `H${at(c)}C${at(c)} ${middle} ${at(a)} ${middle} ${at(a)} ${at(top)}z`
  );
}

function drawFlag({ time, numbers }: Flag, scale: Scale, axis: number, bottom: number): Markup {
  const x = scale.x(time);
  const words = numbers.join(",");
  const width = 10 + 7 * words.length;
  return element(
    "g",
    {},
    element("path", { class: "flag", d: `M${at(x)} ${at(axis - 14)}V${at(bottom)}` }),
    element("rect", { class: "fault", x: at(x - width / 2), y: at(axis - 30), width, height: 16, rx: 8 }),
    label(x, axis - 18, "number on-colour", words),
  );
}
