import type { Canvas } from "../ribbon/panel.ts";
import type { Ribbon } from "../ribbon/ribbon.ts";
import { axisInset, drawPanel } from "./draw-panel.ts";
import { drawPaths, pathsHeight, pathsWidth } from "./draw-paths.ts";
import { drawVerdict } from "./draw-verdict.ts";
import { at, element, label, type Markup, text } from "./element.ts";
import { styleSheet } from "./style.ts";

const width = 1600;
const margin = 28;
const left = margin + axisInset;
const right = width - margin;
const betweenParts = 34;

/** What a ribbon has to be laid out for, to be drawn by `ribbonAsSvg`. */
export const svgCanvas: Canvas = { columns: right - left, perTick: 90 };

/** The picture as a document of its own: SVG 1.1, with a title and a description, readable on light and dark. */
export function ribbonAsSvg(ribbon: Ribbon): string {
  const parts: Markup[] = [
    label(margin, margin + 18, "title", ribbon.title),
    label(
      right,
      margin + 18,
      ribbon.passed ? "outcome good" : "outcome bad",
      ribbon.passed ? "passed" : "failed",
    ),
  ];
  let y = margin + 26;
  for (const [name, words] of ribbon.setup) {
    y += 17;
    parts.push(label(margin, y, "small soft", name), label(margin + 60, y, "small", words));
  }
  for (const [index, panel] of ribbon.panels.entries()) {
    y += betweenParts;
    const drawn = drawPanel(panel, String(index), y, margin, left, right);
    parts.push(drawn.markup);
    y += drawn.height;
  }
  y += betweenParts;
  const beside = margin + pathsWidth + 40;
  const verdict = drawVerdict(ribbon, beside, y, right - beside);
  parts.push(drawPaths(ribbon.paths, margin, y), verdict.markup);
  const height = at(y + Math.max(pathsHeight, verdict.height) + margin);
  const svg = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      "aria-labelledby": "ribbon-title ribbon-description",
    },
    element("title", { id: "ribbon-title" }, text(ribbon.title)),
    element("desc", { id: "ribbon-description" }, text(ribbon.description)),
    styleSheet(),
    element("rect", { class: "paper", width, height }),
    ...parts,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`;
}
