import { percentText, plain, timeText } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
import { receiverTolerance, receiverToleranceSource } from "../model/receiver-tolerance.ts";
import { formatSource } from "../model/sources.ts";
import { sourceOf } from "./bounds.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

const partWords = { start: "start bit", data: "data bits", stop: "stop bit" } as const;

/** A delay that makes one bit of a byte sent by the program itself. */
export function explainBitTime({ facts, file, offset }: Place): Explanation | undefined {
  const known = quantity("serial.bit-time");
  for (const { bits, pin } of facts.serial.bitBanged) {
    const bit = bits.find(({ span }) => holds(span, file, offset));
    if (bit === undefined || known === undefined) continue;
    const baud = facts.serial.wantedBaud?.baud;
    const dataBits = bits.filter(({ part }) => part === "data").length;
    return explanation(bit.span, `${timeText(bit.us)} on ${pin}: the ${partWords[bit.part]} of a byte`, [
      known.meaning,
      baud === undefined ? undefined : differenceLine(bit.us, baud),
      baud === undefined ? undefined : toleranceLine(dataBits),
      sourceOf(known),
    ]);
  }
  return undefined;
}

function differenceLine(us: number, baud: number): string {
  const wantedUs = 1e6 / baud;
  const off = (us / wantedUs - 1) * 100;
  const how =
    Math.abs(off) < 0.005 ? "just as long" : `${percentText(off)} ${off < 0 ? "shorter" : "longer"}`;
  return `At ${baud} baud a bit lasts ${plain(wantedUs, 1)} us. This delay is ${how}; what the code around it takes comes on top.`;
}

function toleranceLine(dataBits: number): string {
  const { slowPercent, fastPercent } = receiverTolerance(dataBits, 16);
  return (
    `A receiver of ${dataBits} data bits takes a sender that is up to ${percentText(100 - slowPercent)} slow or ` +
    `${percentText(fastPercent - 100)} fast (${formatSource(receiverToleranceSource)}).`
  );
}
