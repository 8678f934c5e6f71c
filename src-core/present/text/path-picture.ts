import type { PathPoint } from "../../simulation-result.ts";

const columns = 29;
const rows = 11;

/**
 * The path that was sent beside the path that was received, on one scale: `o` is the start, `x` the end, `*` between. Up is
 * up. A terminal's characters are about twice as high as wide, so a count is twice as many columns as rows.
 */
export function pathPicture(sent: readonly PathPoint[], received: readonly PathPoint[]): readonly string[] {
  const all = [...sent, ...received];
  const left = Math.min(...all.map(({ x }) => x));
  const right = Math.max(...all.map(({ x }) => x));
  const bottom = Math.min(...all.map(({ y }) => y));
  const top = Math.max(...all.map(({ y }) => y));
  const perColumn = Math.max((right - left) / (columns - 1), (top - bottom) / (rows - 1) / 2, 1 / 2);
  const drawn = (path: readonly PathPoint[]): readonly string[] => {
    const grid = Array.from({ length: rows }, () => Array.from({ length: columns }, () => "."));
    const put = ({ x, y }: PathPoint, mark: string): void => {
      const column = Math.round((x - left) / perColumn);
      const row = rows - 1 - Math.round((y - bottom) / perColumn / 2);
      const line = grid[row];
      if (line !== undefined && column < columns) line[column] = mark;
    };
    for (const point of between(path)) put(point, "*");
    const [first] = path;
    const last = path.at(-1);
    if (first !== undefined) put(first, "o");
    if (last !== undefined) put(last, "x");
    return grid.map((line) => line.join(""));
  };
  const one = drawn(sent);
  const other = drawn(received);
  return [
    `${"sent by the mouse".padEnd(columns)}   received by the PC`,
    ...one.map((line, row) => `${line}   ${other[row] ?? ""}`),
  ];
}

/** Points of a path with those on the straight lines between them. */
function between(path: readonly PathPoint[]): readonly PathPoint[] {
  return path.flatMap((point, index) => {
    const from = path[index - 1];
    if (from === undefined) return [point];
    const steps = Math.max(1, Math.abs(point.x - from.x), Math.abs(point.y - from.y));
    return Array.from({ length: steps }, (_, step) => ({
      x: from.x + ((point.x - from.x) * (step + 1)) / steps,
      y: from.y + ((point.y - from.y) * (step + 1)) / steps,
    }));
  });
}
