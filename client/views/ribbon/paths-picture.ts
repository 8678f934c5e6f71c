import type { Paths } from "../../../server/language-server/client-messages/runs.ts";
import { draw } from "../elements.ts";

const side = 220;

/** The path sent beside the path received, over each other. */
export function pathsPicture({ sent, received, left, right, bottom, top }: Paths): Element {
  const margin = Math.max(right - left, top - bottom, 1) * 0.06;
  const size = Math.max(right - left, top - bottom, 1) + 2 * margin;
  const centre = { x: (left + right) / 2, y: (bottom + top) / 2 };
  const x = (value: number): number => ((value - centre.x) / size + 0.5) * side;
  const y = (value: number): number => (0.5 - (value - centre.y) / size) * side;
  const line = (points: Paths["sent"], kind: string): Element =>
    draw("polyline", {
      class: `path ${kind}`,
      points: points.map((point) => `${x(point.x).toFixed(1)},${y(point.y).toFixed(1)}`).join(" "),
    });
  const end = (points: Paths["sent"]): string => `${points.at(-1)?.x ?? 0}, ${points.at(-1)?.y ?? 0}`;
  const words = `Path sent, ending at ${end(sent)}; path received, ending at ${end(received)}`;
  return draw(
    "svg",
    { viewBox: `0 0 ${side} ${side}`, width: side, height: side, role: "img", "aria-label": words },
    line(sent, "sent"),
    line(received, "received"),
    draw("circle", { class: "origin", cx: x(0), cy: y(0), r: 3 }),
  );
}
