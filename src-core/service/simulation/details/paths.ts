import type { Run } from "../../../bench/run-record.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import type { PathPoint, SimulatedRun } from "../../../simulation-result.ts";

/** Where the mouse's reports lead, and where those do that the PC took. */
export function pathsOf({ mouse, pc, wanted }: Run): Pick<SimulatedRun, "sent" | "received"> {
  const growsUp = wanted.layout.movements.find(({ name }) => name === "y")?.positive === "up";
  return {
    sent: pathOf(
      mouse.reports.map(({ values }) => values),
      1,
    ),
    received: pathOf(
      pc.reports.map(({ values }) => values),
      growsUp ? 1 : -1,
    ),
  };
}

function pathOf(reports: readonly ReportValues[], up: 1 | -1): readonly PathPoint[] {
  let x = 0;
  let y = 0;
  const points: PathPoint[] = [{ x, y }];
  for (const values of reports) {
    x += values.x ?? 0;
    y += up * (values.y ?? 0);
    points.push({ x, y });
  }
  return points;
}
