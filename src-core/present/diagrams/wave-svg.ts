import { textOf } from "../xml.ts";
import type { Driver, Lane, Step, Stretch, WaveDiagram } from "./wave.ts";

const gutter = 118;
const unit = 52;
const margin = 16;
const titleHeight = 34;
const high = 8;
const low = 34;
const cellHeight = 20;
const measureHeight = 26;
/** Width of a rising or falling edge. */
const slope = 3;

/** A diagram as a scalable picture that follows the reader's light or dark colours. */
export function waveSvg(diagram: WaveDiagram): string {
  const { title, description, length, lanes } = diagram;
  const drivers = driversOf(lanes);
  const width = gutter + length * unit + 2 * margin;
  const tops = topsOf(lanes);
  const height = (tops.at(-1) ?? titleHeight) + 26;
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="title description">`,
    `<title id="title">${textOf(title)}</title>`,
    `<desc id="description">${textOf(description)}</desc>`,
    style,
    `<rect class="paper" width="${width}" height="${height}"/>`,
    text(margin, 22, title, "heading"),
    ...lanes.map((lane, index) => laneAsSvg(lane, tops[index] ?? 0, length)),
    legend(drivers, height - 10),
    "</svg>",
  ].join("\n")}\n`;
}

const colours: Readonly<Record<Driver, readonly [light: string, dark: string]>> = {
  mouse: ["#1a6b8a", "#6cc5e6"],
  adapter: ["#a03c1c", "#f0a080"],
  host: ["#a03c1c", "#f0a080"],
  PC: ["#5b4a9c", "#b9a8f5"],
  nobody: ["#767676", "#9a9a9a"],
};

function stroke(theme: 0 | 1): string {
  return Object.entries(colours)
    .map(([driver, pair]) => `.${driver}{stroke:${pair[theme]}}text.${driver}{fill:${pair[theme]}}`)
    .join("");
}

/** The host's lines are thicker, those of nobody are dotted, so that colour is not all that tells them apart. */
const style = `<style>
text{font:12px system-ui,sans-serif;fill:#222;stroke:none}
.heading{font-size:14px;font-weight:600}
.small{font-size:11px}
.paper{fill:#fff}
.wire{fill:none;stroke-width:2}
.host,.adapter{stroke-width:3}
.nobody{stroke-dasharray:2 3}
.rule{stroke:#bbb;stroke-width:1}
.measure{stroke:#555;stroke-width:1;fill:none}
${stroke(0)}
@media (prefers-color-scheme: dark){text{fill:#ddd}.paper{fill:#1b1b1b}.rule{stroke:#555}.measure{stroke:#aaa}${stroke(1)}}
</style>`;

/** Top of each lane, and the bottom of the last. */
function topsOf(lanes: readonly Lane[]): readonly number[] {
  const tops = [titleHeight];
  for (const lane of lanes) tops.push((tops.at(-1) ?? 0) + heightOf(lane));
  return tops;
}

function heightOf({ cells, measures }: Lane): number {
  return low + 10 + (cells.length > 0 ? cellHeight : 0) + measures.length * measureHeight + 8;
}

function laneAsSvg(lane: Lane, top: number, length: number): string {
  const { name, levelNames, cells, measures } = lane;
  const cellTop = top + low + 6;
  const measureTop = cellTop + (cells.length > 0 ? cellHeight : 0);
  return [
    text(margin, top + 26, name),
    ...(levelNames === undefined
      ? []
      : [
          text(gutter + margin - 6, top + high + 4, levelNames[0], "small", "end"),
          text(gutter + margin - 6, top + low + 4, levelNames[1], "small", "end"),
        ]),
    ...wires(lane, top, length),
    ...cells.map((cell) => cellAsSvg(cell, cellTop)),
    ...measures.map((measure, index) =>
      measureAsSvg(measure, measureTop + 12 + index * measureHeight, top + high, length),
    ),
  ].join("\n");
}

/** One path for each stretch that one driver holds. */
function wires({ steps }: Lane, top: number, length: number): readonly string[] {
  return steps.map((step, index) => {
    const before = steps[index - 1];
    const end = steps[index + 1]?.at ?? length;
    const y = yOf(step, top);
    const x = xOf(step.at);
    const rise =
      before === undefined || before.level === step.level
        ? `M${x} ${y}`
        : `M${x} ${yOf(before, top)}L${x + slope} ${y}`;
    return `<path class="wire ${step.driver}" d="${rise}L${xOf(end)} ${y}"/>`;
  });
}

function cellAsSvg({ from, to, text: words }: Stretch, top: number): string {
  const left = xOf(from);
  const right = xOf(to);
  return [
    `<path class="rule" d="M${left} ${top}V${top + cellHeight - 6}M${right} ${top}V${top + cellHeight - 6}"/>`,
    text((left + right) / 2, top + 12, words, "small", "middle"),
  ].join("");
}

/** A dimension line from one time to another, with thin lines up to the wire, and its words beside or above it. */
function measureAsSvg(
  { from, to, text: words }: Stretch,
  y: number,
  wireTop: number,
  length: number,
): string {
  const left = xOf(from);
  const right = xOf(to);
  const isRightHalf = from > length * 0.6;
  return [
    `<path class="rule" d="M${left} ${wireTop}V${y + 4}M${right} ${wireTop}V${y + 4}"/>`,
    `<path class="measure" d="M${left} ${y}H${right}M${left + 4} ${y - 3}L${left} ${y}L${left + 4} ${y + 3}M${right - 4} ${y - 3}L${right} ${y}L${right - 4} ${y + 3}"/>`,
    isRightHalf ? text(left - 5, y + 4, words, "small", "end") : text(right + 5, y + 4, words, "small"),
  ].join("");
}

function legend(drivers: readonly Driver[], y: number): string {
  let x = gutter + margin;
  const words: Readonly<Record<Driver, string>> = {
    mouse: "driven by the mouse",
    host: "driven by the host",
    nobody: "let go: pulled up",
    adapter: "driven by the adapter",
    PC: "driven by the PC",
  };
  return drivers
    .map((driver) => {
      const at = x;
      x += 190;
      return `<path class="wire ${driver}" d="M${at} ${y - 4}h22"/>${text(at + 28, y, words[driver], "small")}`;
    })
    .join("");
}

function driversOf(lanes: readonly Lane[]): readonly Driver[] {
  return [...new Set(lanes.flatMap(({ steps }) => steps.map(({ driver }) => driver)))];
}

function xOf(time: number): number {
  return Math.round((gutter + margin + time * unit) * 10) / 10;
}

function yOf({ level }: Step, top: number): number {
  return top + (level === 1 ? high : low);
}

function text(x: number, y: number, words: string, kind = "", anchor = ""): string {
  const attributes = `${kind === "" ? "" : ` class="${kind}"`}${anchor === "" ? "" : ` text-anchor="${anchor}"`}`;
  return `<text x="${x}" y="${y}"${attributes}>${textOf(words)}</text>`;
}
