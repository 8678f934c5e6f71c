import { plain } from "../../figures.ts";
import type { Run } from "../run-record.ts";
import { ms, type Time } from "../time/time.ts";
import type { FindingsOfRun } from "./findings.ts";
import type { HostSide } from "./ps2/host-frames.ts";

/**
 * Counts that overflowed in the mouse because the firmware kept it quiet while its last report waited, for most of the time
 * since. A mouse that has nothing to say loses nothing by being kept quiet.
 */
export function judgeLostInMouse({ mouse }: Run, { holds }: HostSide, findings: FindingsOfRun): void {
  for (const [index, { sampled, lost }] of mouse.reports.entries()) {
    const count = Math.abs(lost.x) + Math.abs(lost.y) + Math.abs(lost.wheel);
    const before = mouse.reports[index - 1];
    if (count === 0 || before?.sentAt === undefined) continue;
    const { sampled: since, sentAt } = before;
    const held = holds.map(({ from = sentAt, to }) => overlap(from, to, since, sentAt));
    const total = held.reduce((sum, each) => sum + each, 0);
    if (total * 2 < sampled - since) continue;
    const longest = holds[held.indexOf(Math.max(...held))];
    findings.fail({
      rule: "serial/blocks-receive",
      message: `the mouse is kept quiet for ${plain(total / ms, 1)} ms and loses ${count} counts: hear it while bytes go to the PC`,
      time: sampled,
      at: longest?.cause.at,
      measured: { value: count, unit: "counts" },
      limit: { atMost: 0, unit: "counts" },
    });
  }
}

function overlap(from: Time, to: Time, since: Time, until: Time): Time {
  return Math.max(0, Math.min(to, until) - Math.max(from, since));
}
