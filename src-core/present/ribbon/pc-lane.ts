import type { Time } from "../../bench/time/time.ts";
import { bytesText } from "../../figures.ts";
import type { OutgoingReport, RunDetails } from "../../run-details.ts";
import type { SimulatedRun } from "../../simulation-result.ts";
import { levelAtStart } from "../levels.ts";
import { markOf } from "./mark-of.ts";
import { reportInBrief, reportInWords } from "./report-words.ts";
import type { Mark } from "./ribbon.ts";
import { moment } from "./time-axis.ts";

/** Reports that the PC took, and what it was told when it asked who is there. */
export function outgoingMarks({ details, verdict }: SimulatedRun): readonly Mark[] {
  const answers = verdict.figures.identifications.flatMap(({ asked, bytes, outcome }) => {
    const told = details.serialBytes.filter(({ to }) => to > asked).slice(0, bytes.length);
    const [first] = told;
    const last = told.at(-1);
    if (first === undefined || last === undefined) return [];
    const text = bytesText(bytes);
    return [
      markOf("control", first.from, last.to, {
        texts: [`${outcome}: ${text}`, text],
        detail: `${outcome}: ${text} (${moment(first.from)})`,
        isFault: outcome === "wrong",
      }),
    ];
  });
  const reports = details.outgoing.map((report) =>
    markOf("report", report.from, report.to, {
      texts: [reportInWords(report.values), reportInBrief(report.values)],
      detail: outgoingDetail(report),
    }),
  );
  return [...answers, ...reports];
}

export function outgoingDetail({ from, values, bytes }: OutgoingReport): string {
  return `${reportInWords(values)}: ${bytesText(bytes)} (${moment(from)})`;
}

export function byteMarks({ serialBytes }: RunDetails): readonly Mark[] {
  return serialBytes.map(({ from, to, byte, fault }) => {
    const hex = bytesText([byte]);
    const wrong = fault === undefined ? "" : `: ${fault}`;
    return markOf("byte", from, to, {
      texts: [`${hex}${wrong}`, hex],
      detail: `${hex}${wrong} (${moment(from)})`,
      isFault: fault !== undefined,
    });
  });
}

/** When a control line of the PC is ON. */
export function controlMarks(wire: "rts" | "dtr", { edges }: RunDetails, ended: Time): readonly Mark[] {
  const name = wire.toUpperCase();
  const changes = edges.filter((edge) => edge.wire === wire);
  const starts = [
    { time: 0, level: levelAtStart(wire, edges) },
    ...changes.map(({ time, level }) => ({ time, level })),
  ];
  return starts.flatMap(({ time: from, level }, index) => {
    if (level === 1) return [];
    const to = starts[index + 1]?.time ?? ended;
    return [
      markOf("control", from, to, {
        texts: [`${name} ON`, "ON"],
        detail: `${name} is ON from ${moment(from)} to ${moment(to)}`,
      }),
    ];
  });
}
