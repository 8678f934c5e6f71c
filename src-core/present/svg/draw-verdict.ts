import { type FaultText, type LabelledText, placeText, type Ribbon } from "../ribbon/ribbon.ts";
import type { Drawn } from "./draw-panel.ts";
import { at, element, label, type Markup } from "./element.ts";
import { wrapped } from "./fit.ts";

const lineHeight = 18;
const labelWidth = 104;
/** More are told by the report as text. */
const mostFaults = 12;

/** Figures of the run, then its faults by number. */
export function drawVerdict(
  { figures, faults, passed }: Ribbon,
  left: number,
  top: number,
  width: number,
): Drawn {
  let y = top + 12;
  const parts: Markup[] = [label(left, y, "heading", "verdict")];
  parts.push(
    label(left + labelWidth, y, passed ? "heading good" : "heading bad", passed ? "passed" : "failed"),
  );
  const say = (rows: readonly LabelledText[]): void => {
    for (const [name, words] of rows) {
      for (const [index, part] of wrapped(words, width - labelWidth).entries()) {
        y += lineHeight;
        if (index === 0) parts.push(label(left, y, "soft", name));
        parts.push(label(left + labelWidth, y, "said", part));
      }
    }
  };
  say(figures);
  y += 6;
  for (const fault of faults.slice(0, mostFaults)) {
    const { markup, height } = drawFault(fault, left, y, width);
    parts.push(markup);
    y += height;
  }
  if (faults.length > mostFaults) {
    y += lineHeight;
    parts.push(label(left + 28, y, "soft", `and ${faults.length - mostFaults} more, in the report as text`));
  }
  return { markup: element("g", {}, ...parts), height: y - top + 8 };
}

function drawFault(
  { number, message, details, place }: FaultText,
  left: number,
  top: number,
  width: number,
): Drawn {
  const words = wrapped(message, width - 28);
  const more = wrapped(
    [placeText(place), ...details].filter((each) => each !== "").join(" \u00b7 "),
    width - 28,
  );
  const y = top + lineHeight;
  const markup = element(
    "g",
    {},
    element("circle", { class: "fault", cx: at(left + 9), cy: at(y - 4.5), r: 8.5 }),
    label(left + 9, y - 0.8, "number on-colour", String(number)),
    ...words.map((line, index) => label(left + 28, y + index * lineHeight, "said", line)),
    ...more.map((line, index) =>
      label(left + 28, y + (words.length + index) * lineHeight, "small soft", line),
    ),
  );
  return { markup, height: (words.length + more.length) * lineHeight + 4 };
}
