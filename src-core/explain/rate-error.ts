import type { SetUp } from "../facts/serial/serial-facts.ts";
import { percentText, plain } from "../figures.ts";
import { errorPercent } from "../model/divisors/baud-generator.ts";
import { bitsPerFrame } from "../model/line-formats.ts";
import {
  receiverTolerance,
  receiverToleranceSource,
  recommendedErrorPercent,
} from "../model/receiver-tolerance.ts";
import type { Source } from "../model/sources.ts";

/** Data bits of a frame whose format is not known: what a serial mouse has. */
const usualBits = 7;

/** Samples per bit of the receiver in the PC. */
const samples = 16;

/** The table holds both the tolerance and the advice. */
export const errorSources: readonly Source[] = [receiverToleranceSource];

/** How far a rate is off, what that makes over a frame, what a receiver bears, and what is left of it. */
export function errorLine({ format: { format } }: SetUp, actual: number, wanted: number): string {
  const error = errorPercent(actual, wanted);
  const data = format === undefined ? usualBits : format.dataBits + (format.parity === "none" ? 0 : 1);
  const frame = format === undefined ? usualBits + 2 : bitsPerFrame(format);
  const { slowPercent, fastPercent } = receiverTolerance(data, samples);
  const size = Math.abs(error) < 0.005 ? "0 %" : `${error > 0 ? "+" : "-"}${percentText(error)}`;
  return (
    `Wanted: ${wanted} baud. Error ${size} per bit, ${drift(Math.abs(error) * frame)} over a frame of ${frame} bits. ` +
    `A receiver of ${data} data bits takes -${percentText(100 - slowPercent)} to +${percentText(fastPercent - 100)} in all` +
    `${adviceOf(data, error)}.`
  );
}

/** Past a whole bit, how far past tells nobody anything. */
function drift(percentOfBit: number): string {
  return percentOfBit > 100 ? "more than a bit" : `${percentText(percentOfBit)} of a bit`;
}

function adviceOf(data: number, error: number): string {
  const advised = recommendedErrorPercent(data, samples);
  if (advised === undefined) return "";
  const slack = advised - Math.abs(error);
  const margin = slack < 0 ? `${percentText(slack)} too much` : `margin ${plain(slack, 2)} %`;
  return `; each end should stay within ${advised} %, ${margin}`;
}
