import { hexText, plain } from "../../../figures.ts";
import { formatSources } from "../../../model/sources.ts";
import { figure, figureOf } from "../../time/figures.ts";
import { type Time, us } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";
import type { FindingsOfRun } from "../findings.ts";
import { dataAt, type HostFrame, PULSES } from "./host-frames.ts";

const SETTLED = figure("ps2.data-settled", "max");
/** The latest that any source advises: sooner than that harms no mouse that keeps its clock low for 30 us. */
const LATEST_CHANGE = figureOf("ps2ProtocolArticle", "ps2.data-change-delay", "max");
const FIRST_SAMPLE = figure("ps2.device-sample", "min");
const DATA_BITS = 8;

/** Bits of a byte to the mouse: when they were put on the line, and their parity. */
export function judgeBits(frame: HostFrame, findings: FindingsOfRun): void {
  const areSettled = frame.data.map((edge) => judgeChange(frame, edge, findings));
  if (frame.outcome === "whole") {
    measureAcknowledge(frame, findings);
    // A bit that changes late is read wrong, and so may make the parity wrong.
    if (!areSettled.includes(false)) judgeParity(frame, findings);
  }
}

/** The byte as the mouse reads it; undefined where it is not whole. */
export function byteOf(frame: HostFrame): number | undefined {
  if (frame.outcome !== "whole") return undefined;
  return levels(frame, DATA_BITS).reduce((byte: number, level, bit) => byte | (level << bit), 0);
}

export function isAcknowledged(frame: HostFrame): boolean {
  const last = frame.falls[PULSES - 1];
  return last !== undefined && dataAt(frame, last) === 0;
}

function levels(frame: HostFrame, count: number): readonly (0 | 1)[] {
  return frame.rises.slice(0, count).map((rise) => dataAt(frame, rise + FIRST_SAMPLE));
}

function judgeChange({ falls, rises }: HostFrame, edge: Edge, findings: FindingsOfRun): boolean {
  const { time, cause } = edge;
  const pulse = falls.filter((fall) => fall <= time).length;
  // Before the first pulse and behind the stop bit the mouse does not look.
  if (cause.party !== "firmware" || pulse === 0 || pulse === PULSES) return true;
  const fall = falls[pulse - 1] ?? time;
  const rise = rises[pulse - 1];
  if (rise !== undefined && time > rise) {
    const what = "data changes after the mouse's clock rose, when the mouse reads it, by";
    findings.measureTime("ps2.data-settled", time - rise, "ps2/sample-edge", what, time, cause.at);
    return time - rise <= SETTLED;
  }
  const delay = time - fall;
  findings.measureTime("ps2.data-change-delay", delay, undefined, "", time, cause.at);
  if (delay > LATEST_CHANGE) {
    findings.fail({
      rule: "ps2/sample-edge",
      message: `data changes ${plain(delay / us, 2)} us after the mouse's clock fell; right is at most ${plain(LATEST_CHANGE / us, 2)} us`,
      time,
      at: cause.at,
      measured: { value: delay / us, unit: "us" },
      limit: { atMost: LATEST_CHANGE / us, unit: "us" },
      source: formatSources([{ document: "ps2ProtocolArticle", place: "Host-to-Device" }]),
    });
  }
  return true;
}

function judgeParity(frame: HostFrame, findings: FindingsOfRun): void {
  const bits = levels(frame, DATA_BITS + 1);
  const ones = bits.filter((level) => level === 1).length;
  if (ones % 2 === 1) return;
  const sampled: Time = frame.rises[DATA_BITS] ?? frame.ended;
  const change = frame.data.findLast(({ time, cause }) => time <= sampled && cause.party === "firmware");
  findings.fail({
    rule: "ps2/parity-wrong",
    message: `the byte ${hexText(byteOf(frame) ?? 0)} is sent to the mouse with parity bit ${bits[DATA_BITS]}: data and parity must have an odd number of ones`,
    time: sampled,
    at: (change?.cause ?? frame.cause).at,
  });
}

function measureAcknowledge(frame: HostFrame, findings: FindingsOfRun): void {
  const last = frame.falls[PULSES - 1];
  const low = frame.data.findLast(
    ({ time, level, cause }) => level === 0 && cause.party === "mouse" && time <= (last ?? 0),
  );
  if (last === undefined || low === undefined) return;
  findings.measureTime("ps2.acknowledge-setup", last - low.time, undefined, "", last, undefined);
}
