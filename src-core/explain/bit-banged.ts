import { plain, timeText } from "../figures.ts";
import { quantity } from "../model/quantities.ts";
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
    const wantedUs = baud === undefined ? undefined : 1e6 / baud;
    return explanation(bit.span, `${timeText(bit.us)} on ${pin}: the ${partWords[bit.part]} of a byte`, [
      known.meaning,
      wantedUs === undefined
        ? undefined
        : `At ${baud} baud a bit is ${plain(wantedUs, 1)} us; this delay is ${plain((bit.us / wantedUs - 1) * 100, 2)} % off, ` +
          "and what the loop around it takes comes on top.",
      sourceOf(known),
    ]);
  }
  return undefined;
}
