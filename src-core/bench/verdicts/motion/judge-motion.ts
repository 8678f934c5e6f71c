import type { Run } from "../../run-record.ts";
import { figure } from "../../time/figures.ts";
import type { Time } from "../../time/time.ts";
import { FindingsOfRun } from "../findings.ts";
import { startOfByte } from "../serial/start-of-byte.ts";
import type { AxisCounts, RunFigures } from "../verdict.ts";
import { type Carried, carriedBy } from "./carried.ts";
import type { Explained } from "./counts.ts";
import { incomingReports } from "./incoming.ts";
import { judgeClicks } from "./judge-clicks.ts";
import { judgeCounts } from "./judge-counts.ts";
import { partsOf } from "./part.ts";

const LONGEST = figure("serial.report-delay", "max");

type MotionFigures = Pick<RunFigures, "counts" | "clicks" | "delay">;

/** What came in from the mouse beside what went out to the PC, session by session. */
export function judgeMotion(run: Run, findings: FindingsOfRun): MotionFigures {
  const counts: AxisCounts[] = [];
  const carried: Carried[] = [];
  const clicks = { in: 0, out: 0 };
  for (const part of partsOf(incomingReports(run.mouse, run.edges), run.pc, run.ended)) {
    const { axes, agree } = judgeCounts(part, run, findings);
    // Where counts are lost, what clicks say as well has the same cause.
    const changes = judgeClicks(part, run, agree ? findings : new FindingsOfRun());
    addCounts(counts, axes);
    clicks.in += changes.in.length;
    clicks.out += changes.out.length;
    // Sums that come to differ say no longer which report brought which.
    if (agree) carried.push(...carriedBy(part, changes.first, changes, run.wanted));
  }
  if (run.pc.sessions.length === 0) return { counts: undefined, clicks: undefined, delay: undefined };
  return { counts, clicks, delay: judgeDelays(carried, run, findings) };
}

function addCounts(sums: AxisCounts[], more: readonly Explained[]): void {
  for (const [index, { axis, ...each }] of more.entries()) {
    const before = sums[index];
    sums[index] = { axis: axis.name, in: each.in + (before?.in ?? 0), out: each.out + (before?.out ?? 0) };
  }
}

/** From the end of an incoming report to the end of the outgoing one that brought it. */
function judgeDelays(
  carried: readonly Carried[],
  { edges }: Run,
  findings: FindingsOfRun,
): RunFigures["delay"] {
  const what = "what the mouse says reaches the PC only after";
  const delays = carried.map(({ incoming, outgoing: { time } }) => ({ length: time - incoming.time, time }));
  for (const { length, time } of delays) {
    const at = length > LONGEST ? startOfByte(edges, time) : undefined;
    findings.measureTime("serial.report-delay", length, "serial/throughput", what, time, at);
  }
  const sorted: readonly Time[] = delays.map(({ length }) => length).toSorted((a, b) => a - b);
  const worst = sorted.at(-1);
  const median = sorted[Math.floor(sorted.length / 2)];
  return worst === undefined || median === undefined ? undefined : { median, worst };
}
