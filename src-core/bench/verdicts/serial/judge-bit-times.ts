import { percentText, timeText } from "../../../figures.ts";
import { recommendedErrorPercent, recommendedErrorSources } from "../../../model/receiver-tolerance.ts";
import { formatSource } from "../../../model/sources.ts";
import type { Run } from "../../run-record.ts";
import { second, type Time, us } from "../../time/time.ts";
import type { Edge } from "../../wires/edge.ts";
import type { FindingsOfRun } from "../findings.ts";
import { ownBit } from "./own-bit.ts";
import { type SerialBits, serialBits } from "./serial-bits.ts";

const SAMPLES = 16;

/**
 * How long each bit lasts on the line. Where all are too long or too short, that is one fault, told where it shows first. Else
 * an edge may be off by as much as the last edge of a byte is at the largest error that datasheets recommend for one end, so
 * that a bit which an interrupt lengthens a little is right.
 */
export function judgeBitTimes({ edges, pc, wanted }: Run, findings: FindingsOfRun): void {
  const { dataBits } = wanted.layout;
  const percent = recommendedErrorPercent(dataBits, SAMPLES);
  if (percent === undefined) throw new Error(`no recommended error for ${dataBits} bits`);
  const bit = second / wanted.baud;
  const own = ownBit(edges, bit, dataBits);
  const bits = [...serialBits(edges, pc.bytes, { bit, own }, dataBits)];
  for (const { length, bits: count, end } of bits)
    findings.measureTime("serial.bit-time", length / count, undefined, "", end.time, undefined);
  const [first] = bits;
  if (first === undefined) return;
  if (Math.abs(own / bit - 1) * 100 > percent) fail(first.end, own, bit, percent, findings);
  else judgeEdges(bits, bit, percent, dataBits, findings);
}

/** Of a byte with an edge in the wrong place, the bit that is furthest off is told. */
function judgeEdges(
  bits: readonly SerialBits[],
  bit: Time,
  percent: number,
  dataBits: number,
  findings: FindingsOfRun,
): void {
  const most = ((dataBits + 1) * bit * percent) / 100;
  let worst: SerialBits | undefined;
  for (const each of bits) {
    if (each.isFirst || worst === undefined || offBy(each, bit) > offBy(worst, bit)) worst = each;
    if (Math.abs(each.late) > most) fail(worst.end, worst.length / worst.bits, bit, percent, findings);
  }
}

/** The part of its length by which a bit is wrong. */
function offBy({ length, bits }: SerialBits, bit: Time): number {
  return Math.abs(length / bits / bit - 1);
}

function fail(end: Edge, length: Time, bit: Time, percent: number, findings: FindingsOfRun): void {
  const value = length / us;
  const off = (value / (bit / us) - 1) * 100;
  findings.fail({
    rule: "serial/bit-time",
    message: `a bit lasts ${timeText(value)} on the line, ${percentText(off)} too ${off > 0 ? "long" : "short"}: right is ${timeText(bit / us)}`,
    time: end.time,
    at: end.cause.at,
    measured: { value, unit: "us" },
    limit: {
      atLeast: (bit / us) * (1 - percent / 100),
      atMost: (bit / us) * (1 + percent / 100),
      unit: "us",
    },
    source: formatSource(recommendedErrorSources[SAMPLES]),
  });
}
