import type { PathPoint } from "../../simulation-result.ts";
import type { Paths } from "../ribbon/ribbon.ts";
import { at, element, label, type Markup, text } from "./element.ts";

/** Side of each of the two squares, and what is between them. */
const side = 200;
const apart = 24;
const inset = 14;
const heading = 22;

export const pathsWidth = 2 * side + apart;
export const pathsHeight = heading + side + 20;

/** The path sent beside the path received, on one scale; a dot where both begin, a cross where they end. */
export function drawPaths(paths: Paths, left: number, top: number): Markup {
  const across = Math.max(paths.right - paths.left, paths.top - paths.bottom, 1);
  const perCount = (side - 2 * inset) / across;
  /** What is narrower stands in the middle. */
  const free = (size: number): number => (side - size * perCount) / 2;
  const place = (origin: number) => ({
    x: (x: number) => origin + free(paths.right - paths.left) + (x - paths.left) * perCount,
    y: (y: number) => top + heading + free(paths.top - paths.bottom) + (paths.top - y) * perCount,
  });
  const one = (
    words: string,
    kind: "sent" | "received",
    points: readonly PathPoint[],
    origin: number,
  ): Markup => {
    const { x, y } = place(origin);
    return element(
      "g",
      {},
      label(origin, top + 12, "heading", words),
      element("rect", {
        class: "frame",
        x: at(origin),
        y: at(top + heading),
        width: side,
        height: side,
        rx: 4,
      }),
      element("path", {
        class: "grid",
        d: `M${at(x(0))} ${at(top + heading)}v${side}M${at(origin)} ${at(y(0))}h${side}`,
      }),
      element(
        "path",
        { class: `path path-${kind}`, d: line(points, x, y) },
        element("title", {}, text(`${words}: ${points.length - 1} reports`)),
      ),
      ...ends(points, kind, x, y),
    );
  };
  return element(
    "g",
    {},
    one("path sent", "sent", paths.sent, left),
    one("path received", "received", paths.received, left + side + apart),
    label(left, top + heading + side + 16, "small soft", endsInWords(paths)),
  );
}

type Along = (count: number) => number;

/** Points that fall on the one before are left out. */
function line(points: readonly PathPoint[], x: Along, y: Along): string {
  let d = "";
  let before = "";
  for (const point of points) {
    const here = `${at(x(point.x))} ${at(y(point.y))}`;
    if (here !== before) d += `${d === "" ? "M" : "L"}${here}`;
    before = here;
  }
  return d;
}

function ends(points: readonly PathPoint[], kind: string, x: Along, y: Along): readonly Markup[] {
  const last = points.at(-1);
  if (last === undefined) return [];
  const [endX, endY] = [at(x(last.x)), at(y(last.y))];
  return [
    element("circle", { class: `dot-${kind}`, cx: at(x(0)), cy: at(y(0)), r: 3.5 }),
    element("path", {
      class: `path path-${kind}`,
      d: `M${endX} ${endY}m-4 -4l8 8m0 -8l-8 8`,
    }),
  ];
}

function endsInWords({ sent, received }: Paths): string {
  const end = (points: readonly PathPoint[]): string => `${points.at(-1)?.x ?? 0}, ${points.at(-1)?.y ?? 0}`;
  return `Dot: begins at 0, 0. Cross: sent ends at ${end(sent)}, received at ${end(received)}.`;
}
