import { plain } from "../../../figures.ts";
import { preferredLineFormat, reportsPerSecond } from "../../../model/line-formats.ts";
import { buttonChanges, type SerialReport } from "../../pcs/reports/report-receiver.ts";
import type { Run } from "../../run-record.ts";
import { second, type Time } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import { axesOf, outOf } from "../motion/axes.ts";
import { startOfByte } from "./start-of-byte.ts";

/** Reports that say nothing new may not take the line from those that do: they fill less than half of it. */
export function judgeFlood(run: Run, findings: FindingsOfRun): void {
  const { pc, wanted, ended, edges } = run;
  const { layout, baud } = wanted;
  const most =
    reportsPerSecond(preferredLineFormat(layout), baud, layout.optionalByte ?? layout.bytes.length) / 2;
  for (const { from, to } of pc.sessions) {
    const reports = pc.reports.filter(({ time }) => time > from && time <= (to ?? ended));
    const changes = new Set(buttonChanges(reports).map(({ time }) => time));
    const isEmpty = (report: SerialReport): boolean =>
      !changes.has(report.time) && axesOf(layout).every((axis) => outOf(axis, report.values) === 0);
    judgeStrayBytes(run, from, to ?? ended, findings);
    const empty = reports.filter(isEmpty);
    const [first] = empty;
    const value = (empty.length * second) / ((to ?? ended) - from);
    if (first === undefined || value < most) continue;
    findings.fail({
      rule: "serial/throughput",
      message: `${plain(value, 1)} reports per second say nothing new: send one only when something moved or a button changed`,
      time: first.from,
      at: startOfByte(edges, first.from),
      measured: { value, unit: "report/s" },
      limit: { atMost: most, unit: "report/s" },
    });
  }
}

/** Bytes that belong to no report, and fill half of the line or more. */
function judgeStrayBytes(
  { pc, wanted: { layout, baud }, edges }: Run,
  from: Time,
  to: Time,
  findings: FindingsOfRun,
): void {
  const stray = pc.discarded.filter(({ time }) => time > from && time <= to);
  const [first] = stray;
  const bytes = stray.reduce((sum, each) => sum + each.bytes.length, 0);
  const value = (bytes * second) / (to - from);
  const most = reportsPerSecond(preferredLineFormat(layout), baud, 1) / 2;
  if (first === undefined || value < most) return;
  findings.fail({
    rule: "serial/throughput",
    message: `${plain(value, 1)} bytes per second belong to no report: the line is busy, and the PC throws them away`,
    time: first.time,
    at: startOfByte(edges, first.time),
    measured: { value, unit: "byte/s" },
    limit: { atMost: most, unit: "byte/s" },
  });
}
