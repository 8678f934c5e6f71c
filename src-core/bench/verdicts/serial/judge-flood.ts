import { plain } from "../../../figures.ts";
import { preferredLineFormat, reportsPerSecond } from "../../../model/line-formats.ts";
import { buttonChanges, type SerialReport } from "../../pcs/reports/report-receiver.ts";
import type { Run } from "../../run-record.ts";
import { second } from "../../time/time.ts";
import type { FindingsOfRun } from "../findings.ts";
import { axesOf, outOf } from "../motion/axes.ts";
import { startOfByte } from "./start-of-byte.ts";

/** Reports that say nothing new may not take the line from those that do: they fill less than half of it. */
export function judgeFlood({ pc, wanted, ended, edges }: Run, findings: FindingsOfRun): void {
  const { layout, baud } = wanted;
  const most =
    reportsPerSecond(preferredLineFormat(layout), baud, layout.optionalByte ?? layout.bytes.length) / 2;
  for (const { from, to } of pc.sessions) {
    const reports = pc.reports.filter(({ time }) => time > from && time <= (to ?? ended));
    const changes = new Set(buttonChanges(reports).map(({ time }) => time));
    const isEmpty = (report: SerialReport): boolean =>
      !changes.has(report.time) && axesOf(layout).every((axis) => outOf(axis, report.values) === 0);
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
