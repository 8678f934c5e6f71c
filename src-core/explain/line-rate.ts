import type { SetUp } from "../facts/serial/serial-facts.ts";
import { baudText, clockText, percentText } from "../figures.ts";
import { avrClassic } from "../model/divisors/avr-classic.ts";
import { sketchCoreSetting } from "../model/divisors/avr-library-settings.ts";
import { errorPercent, type Setting } from "../model/divisors/baud-generator.ts";
import { bitsPerFrame } from "../model/line-formats.ts";
import {
  receiverTolerance,
  receiverToleranceSource,
  recommendedErrorPercent,
  recommendedErrorSources,
} from "../model/receiver-tolerance.ts";
import { formatSource } from "../model/sources.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** Data bits of a frame whose format is not known: what a serial mouse has. */
const usualBits = 7;

/** The divisor or the rate that a serial port is set up with. */
export function explainLineRate(place: Place): Explanation | undefined {
  const { facts, file, offset } = place;
  const setUp = facts.serial.setUps.find(({ span }) => holds(span, file, offset));
  const clockHz = facts.board.clock?.hz;
  const setting = setUp && settingOf(setUp, clockHz);
  if (setUp === undefined || setting === undefined) return undefined;
  if (clockHz === undefined) {
    return explanation(setUp.span, `Divisor ${setting.value}`, [
      "The chip's clock is not known, so neither is the rate.",
    ]);
  }
  const actual = avrClassic.actualBaud(clockHz, setting);
  if (actual === undefined) return undefined;
  const wanted = wantedOf(place, setUp);
  return explanation(setUp.span, `${baudText(actual)} baud at ${clockText(clockHz)}`, [
    `${avrClassic.register} = ${setting.value} with ${setting.sampling}: ${avrClassic.formula}.`,
    wanted === undefined ? undefined : errorLine(setUp, actual, wanted),
    wanted === undefined ? undefined : nearestLine(clockHz, wanted, setting),
    `Source: ${formatSource(receiverToleranceSource)}; ${formatSource(recommendedErrorSources[16])}.`,
  ]);
}

function settingOf({ rate, by }: SetUp, clockHz: number | undefined): Setting | undefined {
  if (rate.kind === "divisor") return { sampling: rate.samples === 8 ? "U2X=1" : "U2X=0", value: rate.held };
  if (rate.kind === "unknown" || by !== "core" || clockHz === undefined || rate.baud <= 0) return undefined;
  return sketchCoreSetting(clockHz, rate.baud);
}

function wantedOf({ facts }: Place, setUp: SetUp): number | undefined {
  if (facts.serial.mouseSetUps.includes(setUp) && facts.serial.wantedBaud !== undefined) {
    return facts.serial.wantedBaud.baud;
  }
  if (setUp.rate.kind === "baud") return setUp.rate.baud;
  return setUp.rate.kind === "divisor" ? setUp.rate.named : undefined;
}

function errorLine({ format: { format } }: SetUp, actual: number, wanted: number): string {
  const error = errorPercent(actual, wanted);
  const data = format === undefined ? usualBits : format.dataBits + (format.parity === "none" ? 0 : 1);
  const frame = format === undefined ? usualBits + 2 : bitsPerFrame(format);
  const { slowPercent, fastPercent } = receiverTolerance(data, 16);
  const advised = recommendedErrorPercent(data, 16);
  const share = advised === undefined ? "" : `; each end should stay within ${advised} %`;
  const size = Math.abs(error) < 0.005 ? "0 %" : `${error > 0 ? "+" : "-"}${percentText(error)}`;
  return (
    `Wanted: ${wanted} baud. Error ${size} per bit, ${percentText(Math.abs(error) * frame)} of a bit over a frame of ${frame} bits. ` +
    `A receiver with ${data} data bits takes -${percentText(100 - slowPercent)} to +${percentText(fastPercent - 100)} in all${share}.`
  );
}

function nearestLine(clockHz: number, wanted: number, setting: Setting): string | undefined {
  const best = avrClassic.nearest(clockHz, wanted);
  if (best.kind === "out-of-range") return best.reason;
  if (best.setting.value === setting.value && best.setting.sampling === setting.sampling)
    return "No divisor comes nearer.";
  return `Nearest: ${best.setting.value} with ${best.setting.sampling}, ${percentText(best.errorPercent)} off.`;
}
