import type {
  Lane,
  Mark,
  Panel,
  Stretch,
  Thread,
  TimeWindow,
} from "../../../server/language-server/client-messages/runs.ts";
import { type Colours, fillOf } from "./colours.ts";
import type { Measure } from "./measure.ts";
import { axisHeight, type PlacedLane, type PlacedRow, rowHeight } from "./rows.ts";
import { durationInWords } from "./time-words.ts";

/** Left of the time axis stand the names of lanes and rows. */
export const gutter = 124;

export interface Picture {
  readonly panel: Panel;
  readonly lanes: readonly PlacedLane[];
  readonly rows: readonly PlacedRow[];
  readonly view: TimeWindow;
  /** In pixels, with the gutter. */
  readonly width: number;
  readonly height: number;
  readonly colours: Colours;
  readonly row: number;
  readonly measure: Measure | undefined;
}

const inset = 3;
const narrowest = 1.2;

/** Draws what is in sight. */
export function drawPicture(context: CanvasRenderingContext2D, picture: Picture): void {
  const { panel, lanes, rows, view, width, height, colours } = picture;
  const perPixel = (view.to - view.from) / (width - gutter);
  const xOf = (time: number): number =>
    Math.max(gutter - 2, Math.min(width + 2, gutter + (time - view.from) / perPixel));
  const inSight = ({ from, to }: TimeWindow): boolean => to >= view.from && from <= view.to;
  const pen: Pen = { context, colours, xOf };

  context.clearRect(0, 0, width, height);
  context.textBaseline = "middle";
  drawLanes(pen, lanes, rows, picture.row, width);
  drawTicks(pen, panel, view, height);
  context.save();
  context.beginPath();
  context.rect(gutter, 0, width - gutter, height);
  context.clip();
  drawThreads(
    pen,
    panel.threads.filter((thread) => touches(thread, view)),
    lanes,
  );
  for (const { row, lane, top } of rows) {
    if (row.kind === "wire") drawWire(pen, row.stretches.filter(inSight), top);
    else for (const mark of row.marks) if (inSight(mark)) drawMark(pen, mark, lane, top);
  }
  drawFlags(pen, panel, view, height);
  if (picture.measure !== undefined) drawMeasure(pen, picture.measure, view, height);
  context.restore();
}

interface Pen {
  readonly context: CanvasRenderingContext2D;
  readonly colours: Colours;
  xOf(time: number): number;
}

function touches({ incoming, outgoing }: Thread, { from, to }: TimeWindow): boolean {
  return outgoing.to >= from && incoming.from <= to;
}

function drawLanes(
  { context, colours }: Pen,
  lanes: readonly PlacedLane[],
  rows: readonly PlacedRow[],
  chosen: number,
  width: number,
): void {
  for (const { lane, top, height } of lanes) {
    context.globalAlpha = 0.07;
    context.fillStyle = colours.lane[lane.id];
    context.beginPath();
    context.roundRect(0, top, width, height, 4);
    context.fill();
    context.globalAlpha = 1;
    context.save();
    context.translate(13, top + height / 2);
    context.rotate(-Math.PI / 2);
    context.textAlign = "center";
    context.font = `600 12px ${colours.font}`;
    context.fillText(lane.title, 0, 0);
    context.restore();
  }
  context.textAlign = "right";
  for (const [index, { row, top }] of rows.entries()) {
    const isChosen = index === chosen;
    context.font = `${isChosen ? "600 " : ""}11.5px ${colours.font}`;
    context.fillStyle = isChosen ? colours.ink : colours.soft;
    context.fillText(row.label, gutter - 10, top + rowHeight / 2, gutter - 36);
  }
}

function drawTicks({ context, colours, xOf }: Pen, { ticks }: Panel, view: TimeWindow, height: number): void {
  context.font = `11px ${colours.font}`;
  context.textAlign = "center";
  for (const { time, label } of ticks) {
    if (time < view.from || time > view.to) continue;
    const x = Math.round(xOf(time)) + 0.5;
    context.fillStyle = colours.soft;
    context.fillText(label, x, axisHeight - 14);
    context.strokeStyle = colours.hair;
    context.globalAlpha = colours.hairShare;
    context.lineWidth = 1;
    context.beginPath();
    context.moveTo(x, axisHeight - 6);
    context.lineTo(x, height);
    context.stroke();
    context.globalAlpha = 1;
  }
}

/** From the last row of the first lane to the first row of the last. */
function drawThreads(
  { context, colours, xOf }: Pen,
  threads: readonly Thread[],
  lanes: readonly PlacedLane[],
): void {
  const [first] = lanes;
  const last = lanes.at(-1);
  if (first === undefined || last === undefined) return;
  const top = first.top + first.height - 4;
  const bottom = last.top + 4;
  const middle = (top + bottom) / 2;
  for (const { incoming, outgoing, isSlowest } of threads) {
    const fade = context.createLinearGradient(0, top, 0, bottom);
    fade.addColorStop(0, isSlowest ? colours.host : colours.lane.mouse);
    fade.addColorStop(1, colours.lane.pc);
    const [a, c] = [xOf(incoming.from), xOf(outgoing.from)];
    const [b, d] = [Math.max(a + 1.4, xOf(incoming.to)), Math.max(c + 1.4, xOf(outgoing.to))];
    context.globalAlpha = isSlowest ? 0.55 : 0.26;
    context.fillStyle = fade;
    context.beginPath();
    context.moveTo(a, top);
    context.lineTo(b, top);
    context.bezierCurveTo(b, middle, d, middle, d, bottom);
    context.lineTo(c, bottom);
    context.bezierCurveTo(c, middle, a, middle, a, top);
    context.fill();
  }
  context.globalAlpha = 1;
}

/** High is up; where the wire changes too often to show, both levels and all between. */
function drawWire({ context, colours, xOf }: Pen, stretches: readonly Stretch[], top: number): void {
  const high = top + inset + 1;
  const low = top + rowHeight - inset - 1;
  context.fillStyle = colours.soft;
  context.globalAlpha = 0.4;
  for (const { from, to, level } of stretches) {
    if (level === "busy")
      context.fillRect(xOf(from), high, Math.max(narrowest, xOf(to) - xOf(from)), low - high);
  }
  context.globalAlpha = 1;
  context.strokeStyle = colours.ink;
  context.lineWidth = 1.2;
  context.beginPath();
  let wasDrawn = false;
  for (const { from, to, level } of stretches) {
    if (level !== "busy") {
      const y = level === 0 ? low : high;
      if (wasDrawn) context.lineTo(xOf(from), y);
      else context.moveTo(xOf(from), y);
      context.lineTo(xOf(to), y);
    }
    wasDrawn = level !== "busy";
  }
  context.stroke();
}

function drawMark({ context, colours, xOf }: Pen, mark: Mark, lane: Lane["id"], top: number): void {
  const x = xOf(mark.from);
  const width = Math.max(narrowest, xOf(mark.to) - x);
  const isTinted = (mark.kind === "function" || mark.kind === "control") && !mark.isFault;
  context.globalAlpha = isTinted ? 0.3 : mark.count > 1 ? 0.6 : 1;
  const fill = fillOf(mark, lane, colours);
  context.fillStyle = fill;
  context.beginPath();
  context.roundRect(x, top + inset, width, rowHeight - 2 * inset, width > 6 ? 2 : 0);
  context.fill();
  context.globalAlpha = 1;
  if (width < 16) return;
  context.font = `11px ${colours.monospace}`;
  context.textAlign = "left";
  context.fillStyle = isTinted ? colours.ink : colours.textOn(fill);
  const words = mark.texts.find((text) => context.measureText(text).width <= width - 6);
  if (words !== undefined) context.fillText(words, Math.max(x, gutter) + 3, top + rowHeight / 2 + 0.5);
}

function drawFlags({ context, colours, xOf }: Pen, { flags }: Panel, view: TimeWindow, height: number): void {
  for (const { time, numbers } of flags) {
    if (time < view.from || time > view.to) continue;
    const x = xOf(time);
    context.strokeStyle = colours.fault;
    context.setLineDash([4, 3]);
    context.beginPath();
    context.moveTo(x, 14);
    context.lineTo(x, height);
    context.stroke();
    context.setLineDash([]);
    const words = numbers.join(",");
    context.font = `700 10.5px ${colours.font}`;
    const width = 10 + context.measureText(words).width;
    const left = Math.max(gutter, x - width / 2);
    context.fillStyle = colours.fault;
    context.beginPath();
    context.roundRect(left, 0, width, 16, 8);
    context.fill();
    context.fillStyle = colours.textOn(colours.fault);
    context.textAlign = "center";
    context.fillText(words, left + width / 2, 8.5);
  }
}

function drawMeasure(
  { context, colours, xOf }: Pen,
  { from, to }: Measure,
  view: TimeWindow,
  height: number,
): void {
  const ends = to === undefined ? [from] : [from, to];
  if (Math.max(...ends) < view.from || Math.min(...ends) > view.to) return;
  context.strokeStyle = colours.focus;
  context.lineWidth = 1.5;
  for (const end of ends) {
    context.beginPath();
    context.moveTo(xOf(end), 18);
    context.lineTo(xOf(end), height);
    context.stroke();
  }
  if (to === undefined) return;
  const [left, right] = [Math.min(xOf(from), xOf(to)), Math.max(xOf(from), xOf(to))];
  context.globalAlpha = 0.12;
  context.fillStyle = colours.focus;
  context.fillRect(left, 18, right - left, height - 18);
  context.globalAlpha = 1;
  const words = durationInWords(Math.abs(to - from));
  context.font = `600 11px ${colours.font}`;
  const width = context.measureText(words).width + 10;
  context.fillStyle = colours.focus;
  context.beginPath();
  context.roundRect((left + right - width) / 2, 18, width, 16, 3);
  context.fill();
  context.fillStyle = colours.textOn(colours.focus);
  context.textAlign = "center";
  context.fillText(words, (left + right) / 2, 26.5);
}
