import { type Lane, type Mark, placeText, type Row, type Stretch } from "../ribbon/ribbon.ts";
import { at, element, label, type Markup, text } from "./element.ts";
import { fitting } from "./fit.ts";
import type { Scale } from "./scale.ts";

/** Where a row is drawn, and how high. */
export interface RowPlace {
  readonly top: number;
  readonly height: number;
}

const inset = 3;
const narrowest = 1.2;

export function drawRow(row: Row, lane: Lane["id"], scale: Scale, place: RowPlace): Markup {
  return row.kind === "wire"
    ? drawWire(row.stretches, scale, place)
    : element("g", {}, ...row.marks.map((mark) => drawMark(mark, lane, scale, place)));
}

/** High is up; where the wire changes too often to show, both levels and all between. */
function drawWire(stretches: readonly Stretch[], scale: Scale, { top, height }: RowPlace): Markup {
  const high = top + inset + 1;
  const low = top + height - inset - 1;
  const yOf = (level: Stretch["level"]): number => (level === 0 ? low : high);
  let line = "";
  let busy = "";
  let wasDrawn = false;
  for (const { from, to, level } of stretches) {
    const x = at(scale.x(from));
    if (level === "busy") {
      const width = Math.max(narrowest, scale.x(to) - scale.x(from));
      busy += `M${x} ${at(high)}h${at(width)}V${at(low)}h${at(-width)}z`;
      wasDrawn = false;
      continue;
    }
    line += wasDrawn ? `V${at(yOf(level))}` : `M${x} ${at(yOf(level))}`;
    line += `H${at(scale.x(to))}`;
    wasDrawn = true;
  }
  return element(
    "g",
    {},
    ...(busy === "" ? [] : [element("path", { class: "busy", d: busy })]),
    ...(line === "" ? [] : [element("path", { class: "wire", d: line })]),
  );
}

function drawMark(mark: Mark, lane: Lane["id"], scale: Scale, { top, height }: RowPlace): Markup {
  const x = scale.x(mark.from);
  const width = Math.max(narrowest, scale.x(mark.to) - x);
  const words = fitting(mark.texts, width);
  const many = mark.count > 1 ? " many" : "";
  const rectangle = element(
    "rect",
    {
      class: `${classOf(mark, lane)}${many}`,
      x: at(x),
      y: at(top + inset),
      width: at(width),
      height: at(height - 2 * inset),
      ...(width > 6 ? { rx: 2 } : {}),
    },
    element("title", {}, text(detailOf(mark))),
  );
  if (words === undefined) return rectangle;
  const colour = mark.kind === "function" && !mark.isFault ? "mark" : "mark on-colour";
  return element("g", {}, rectangle, label(x + 3, top + height / 2 + 4, colour, words));
}

function classOf({ kind, isFault, tone }: Mark, lane: Lane["id"]): string {
  if (isFault) return "fault";
  if (kind === "function") return `tone-${tone}`;
  return kind === "report" ? `report-${lane}` : kind;
}

function detailOf({ detail, place }: Mark): string {
  return place === undefined ? detail : `${detail} ${placeText(place)}`;
}
