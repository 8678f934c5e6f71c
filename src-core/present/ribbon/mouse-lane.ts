import { bytesText } from "../../figures.ts";
import type { IncomingReport, MouseFrame, RunDetails } from "../../run-details.ts";
import { markOf } from "./mark-of.ts";
import { reportInBrief, reportInWords } from "./report-words.ts";
import type { Mark } from "./ribbon.ts";
import { moment } from "./time-axis.ts";

/** Bytes of one direction. */
export function frameMarks({ frames }: RunDetails, sender: MouseFrame["sender"]): readonly Mark[] {
  return frames.filter((frame) => frame.sender === sender).map(frameMark);
}

function frameMark({ from, to, sender, byte, meaning, report, fault }: MouseFrame): Mark {
  const hex = bytesText([byte]);
  const wrong = fault === undefined ? "" : `: ${fault}`;
  return markOf(sender === "host" ? "from-host" : "from-mouse", from, to, {
    texts: report === undefined ? [`${hex} ${meaning}${wrong}`, `${hex} ${meaning}`, hex] : [hex],
    detail: `${hex} ${meaning}${wrong} (${moment(from)})`,
    isFault: fault !== undefined,
  });
}

export function incomingMarks({ incoming }: RunDetails): readonly Mark[] {
  return incoming.map((report) => {
    const { from, to, values } = report;
    return markOf("report", from, to ?? from, {
      texts: [reportInWords(values), reportInBrief(values)],
      detail: incomingDetail(report),
      isFault: to === undefined,
    });
  });
}

export function incomingDetail({ from, to, values, bytes }: IncomingReport): string {
  const whole = to === undefined ? ", never sent whole" : "";
  return `${reportInWords(values)}: ${bytesText(bytes)}${whole} (${moment(from)})`;
}
