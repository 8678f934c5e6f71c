import { fieldsOf } from "../../../model/layouts/decode.ts";
import type { ReportLayout } from "../../../model/layouts/layout.ts";
import { synchronisation } from "../../../model/layouts/synchronisation.ts";
import type { ReportValues } from "../../../model/layouts/values.ts";
import { layouts } from "../../../model/report-layouts.ts";
import type { MouseByte, MouseReport, RunMouse } from "../../run-record.ts";
import type { Time } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";

/** A report that the mouse brought to the host whole. */
export interface Incoming {
  /** Its place among the mouse's reports. */
  readonly index: number;
  /** Its last byte was whole. */
  readonly time: Time;
  /** What the firmware sends may tell of it from then on. */
  readonly readableAt: Time;
  readonly values: ReportValues;
  /**
   * It came with wrong parity and not once more: the firmware does well to leave it out. What it says to somebody who
   * does not look at parity.
   */
  readonly spoilt: ReportValues | undefined;
}

export function incomingReports(mouse: RunMouse, edges: readonly Edge[]): readonly Incoming[] {
  const bytes = new Map<number, MouseByte[]>();
  for (const each of mouse.sent) {
    if (each.report === undefined || !each.whole) continue;
    const others = bytes.get(each.report);
    if (others === undefined) bytes.set(each.report, [each]);
    else others.push(each);
  }
  const clockAndData = edges.filter(({ wire }) => wire === "clock" || wire === "data");
  return mouse.reports.flatMap((report, index): Incoming[] => {
    if (report.sentAt === undefined) return [];
    const spoilt = spoiltValues(report, bytes.get(index) ?? [], clockAndData);
    const { sentAt: time, readableAt = time, values } = report;
    return [{ index, time, readableAt, values, spoilt }];
  });
}

function spoiltValues(
  report: MouseReport,
  sent: readonly MouseByte[],
  edges: readonly Edge[],
): ReportValues | undefined {
  const lastDisturbed = sent.findLastIndex(({ disturbed }) => disturbed);
  const cameAgain = sent.slice(lastDisturbed + 1).some(({ resent }) => resent);
  if (lastDisturbed < 0 || cameAgain) return undefined;
  const asRead = sent
    .slice(-report.bytes.length)
    .map((each) => (each.disturbed ? byteOnTheWire(each, edges) : each.byte));
  return fieldsOf(layoutOf(report), asRead).values;
}

function layoutOf({ bytes, values }: MouseReport): ReportLayout {
  if (bytes.length === layouts["ps2-standard"].bytes.length) return layouts["ps2-standard"];
  return "button4" in values ? layouts["ps2-five-button"] : layouts["ps2-wheel"];
}

/** Whether what came over the wires for this byte of a report may still be where it stands in it. */
export function keepsItsPlace(byte: MouseByte, { sent, reports }: RunMouse, edges: readonly Edge[]): boolean {
  const report = byte.report === undefined ? undefined : reports[byte.report];
  if (report === undefined) return true;
  const before = sent.filter(({ report: of, whole, end }) => of === byte.report && whole && end < byte.end);
  if (before.length % report.bytes.length !== 0) return true;
  const asRead = byteOnTheWire(
    byte,
    edges.filter(({ wire }) => wire === "clock" || wire === "data"),
  );
  const { mask, value } = synchronisation(layoutOf(report));
  return (asRead & mask) === value;
}

/** Levels of data at the falling edges of the clock, start bit first. */
function byteOnTheWire({ start, end }: MouseByte, edges: readonly Edge[]): number {
  let data = 1;
  let pulse = 0;
  let byte = 0;
  for (const { time, wire, level } of edges) {
    if (time > end) break;
    if (wire === "data") data = level;
    else if (time >= start && level === 0) {
      if (pulse >= 1 && pulse <= 8) byte |= data << (pulse - 1);
      pulse += 1;
    }
  }
  return byte;
}
