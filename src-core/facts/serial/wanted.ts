import { type LineFormat, parseLineFormat } from "../../model/line-formats.ts";
import { quantity } from "../../model/quantities.ts";
import { layoutNamed } from "../../model/report-layouts.ts";
import type { SerialWords } from "../../notes/wires.ts";
import type { SetUp, WantedBaud, WantedLine } from "./serial-facts.ts";

/** The rate that a note says, or else the one at which a PC listens to the layout that a note says. */
export function wantedBaud({ baud, report }: SerialWords): WantedBaud | undefined {
  if (baud !== undefined) return { baud: baud.value, by: "note", span: baud.span };
  const usual = quantity("serial.baud")?.typical;
  if (report === undefined || usual === undefined || layoutNamed(report.value) === undefined)
    return undefined;
  return { baud: usual, by: "layout", span: report.span };
}

/** The frame that a note says, or else the layout that decides which frames a PC understands. */
export function wantedLine({ line, report }: SerialWords): WantedLine | undefined {
  const format: LineFormat | undefined = line && parseLineFormat(line.value);
  if (line !== undefined && format !== undefined) return { kind: "format", format, span: line.span };
  const layout = report && layoutNamed(report.value);
  return report && layout && { kind: "layout", layout, span: report.span };
}

/** The set-ups of the port that reports leave by. */
export function mouseSetUps(serial: SerialWords, setUps: readonly SetUp[]): readonly SetUp[] {
  if (serial.uart !== undefined) {
    const { value } = serial.uart;
    return setUps.filter(({ port }) => port.kind === "uart" && port.uart === value);
  }
  if (serial.tx !== undefined) return setUps.filter(({ port }) => port.kind === "software");
  const ports = new Set(setUps.map(({ port }) => (port.kind === "uart" ? port.uart : port.kind)));
  return ports.size === 1 ? setUps : [];
}
