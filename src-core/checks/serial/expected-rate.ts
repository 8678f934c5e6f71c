import type { Facts } from "../../facts/facts.ts";
import type { SetUp } from "../../facts/serial/serial-facts.ts";
import { avrClassic } from "../../model/divisors/avr-classic.ts";
import { sketchCoreSetting } from "../../model/divisors/avr-library-settings.ts";
import { errorPercent } from "../../model/divisors/baud-generator.ts";
import { nearestRate } from "../../model/line-rates.ts";
import {
  type ReceiverTolerance,
  receiverTolerance,
  recommendedErrorPercent,
  type SamplesPerBit,
} from "../../model/receiver-tolerance.ts";

/** The rate that a set-up should make, and how far off it may be. */
export interface Expected {
  readonly baud: number;
  /** Why: for the end of "needs" or "is": "the 1200 baud at which a PC listens to a two-button mouse". */
  readonly words: string;
  /** Per cent, sign apart: slower and faster. */
  readonly slow: number;
  readonly fast: number;
}

const USUAL_BITS = 8;

/** How many data and parity bits a set-up's frame has. */
function bitsOf({ format: { format } }: SetUp): number {
  if (format === undefined) return USUAL_BITS;
  return format.dataBits + (format.parity === "none" ? 0 : 1);
}

/** The PC samples 16 times; a port that also listens itself is bound by its own samples. */
function samplesOf(setUp: SetUp): SamplesPerBit {
  return setUp.receives && setUp.rate.kind === "divisor" && setUp.rate.samples === 8 ? 8 : 16;
}

/** The total that a frame can bear, both ends together. */
export function totalTolerance(bits: number, samples: SamplesPerBit): Pick<Expected, "slow" | "fast"> {
  const { slowPercent, fastPercent }: ReceiverTolerance = receiverTolerance(bits, samples);
  return { slow: 100 - slowPercent, fast: fastPercent - 100 };
}

/** The share of one end, as datasheets recommend it. */
export function recommendedTolerance(bits: number, samples: SamplesPerBit): Pick<Expected, "slow" | "fast"> {
  const percent = recommendedErrorPercent(bits, samples);
  return percent === undefined ? totalTolerance(bits, samples) : { slow: percent, fast: percent };
}

/**
 * What a set-up should make: what is said of the mouse's port; else the rate that its divisor was computed from,
 * or that `begin` is given; else the nearest rate that lines are run at, of which only certain misses count.
 */
export function expectedRate(facts: Facts, setUp: SetUp, actualBaud: number): Expected | undefined {
  const { serial } = facts;
  const recommended = recommendedTolerance(bitsOf(setUp), samplesOf(setUp));
  const total = totalTolerance(bitsOf(setUp), samplesOf(setUp));
  if (serial.mouseSetUps.includes(setUp) && serial.wantedBaud !== undefined) {
    return { baud: serial.wantedBaud.baud, words: wantedWords(facts), ...recommended };
  }
  const { rate } = setUp;
  if (rate.kind === "divisor" && rate.named !== undefined) {
    const words = `the ${rate.named} baud that it is computed from`;
    return { baud: rate.named, words, ...recommended };
  }
  if (rate.kind === "baud")
    return { baud: rate.baud, words: `the ${rate.baud} baud that it asks for`, ...total };
  const nearest = nearestRate(actualBaud);
  return nearest === undefined
    ? undefined
    : { baud: nearest, words: `${nearest} baud, the nearest rate that lines are run at`, ...total };
}

/** "the 1200 baud at which a PC listens to a two-button mouse" */
export function wantedWords({ serial, wires }: Facts): string {
  const wanted = serial.wantedBaud;
  if (wanted === undefined) return "";
  if (wanted.by === "note") return `the ${wanted.baud} baud that ${speaker(wanted.span.file)} asks for`;
  return `the ${wanted.baud} baud at which a PC listens to a ${wires.serial.report?.value ?? "serial"} mouse`;
}

export function speaker(file: string): string {
  return file.endsWith(".json") ? "edgewise.json" : "the note";
}

/** What a set-up really makes, in the order of likelihood: one rate, or two where the speed bit is not known. */
export function actualRates(setUp: SetUp, clockHz: number | undefined): readonly number[] {
  const { rate } = setUp;
  if (rate.kind === "unknown") return [];
  if (rate.kind === "baud") {
    if (clockHz === undefined || setUp.by !== "core" || rate.baud <= 0) return [rate.baud];
    return [avrClassic.actualBaud(clockHz, sketchCoreSetting(clockHz, rate.baud)) ?? rate.baud];
  }
  if (clockHz === undefined) return [];
  const samplings = rate.samples === undefined ? ["U2X=0", "U2X=1"] : [samplingOf(rate.samples)];
  return samplings.flatMap(
    (sampling) => avrClassic.actualBaud(clockHz, { sampling, value: rate.held }) ?? [],
  );
}

export function samplingOf(samples: SamplesPerBit): string {
  return samples === 8 ? "U2X=1" : "U2X=0";
}

/** Whether a rate is near enough; a limit is met when it is reached. */
export function isNear(actualBaud: number, expected: Expected): boolean {
  const error = errorPercent(actualBaud, expected.baud);
  return error >= -expected.slow && error <= expected.fast;
}
