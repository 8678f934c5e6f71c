import type { Facts } from "../../facts/facts.ts";
import type { SentByte } from "../../facts/ps2/ps2-facts.ts";
import { codeOf } from "../../model/commands.ts";
import { mouseDefaults } from "../../model/mouse-settings.ts";

/** How often the mouse reports. */
export interface Rate {
  readonly perSecond: number;
  /** The argument, or the command that starts the reports. */
  readonly byte: SentByte;
  /** How many rates were set one right after the other: three are a knock, and none of them may be another. */
  readonly inRow: number;
}

const SET_RATE = codeOf("set sample rate");
const ENABLE = codeOf("enable reporting");
const RESETS: readonly (number | undefined)[] = [codeOf("reset"), codeOf("set defaults")];
const ASKS: readonly (number | undefined)[] = [codeOf("set remote mode"), codeOf("read data")];

/** Rates in a row that unlock something. */
export const RATES_OF_KNOCK = 3;

/** How often the mouse reports in the end; undefined where that is not known, or where it is asked for each report. */
export function rateOf({ ps2 }: Facts): Rate | undefined {
  if (ps2.maySendMore) return undefined;
  const bytes = ps2.sequences.filter(({ from }) => from === "program").flatMap((each) => each.bytes);
  if (bytes.some(({ byte }) => byte === undefined || ASKS.includes(byte))) return undefined;
  let rate: Rate | undefined;
  for (const [index, each] of bytes.entries()) {
    const argument = bytes[index + 1];
    if (RESETS.includes(each.byte)) rate = undefined;
    if (each.byte === SET_RATE && argument?.byte !== undefined) {
      const follows = bytes[index - 2]?.byte === SET_RATE;
      rate = { perSecond: argument.byte, byte: argument, inRow: follows ? (rate?.inRow ?? 0) + 1 : 1 };
    }
  }
  const enabled = bytes.findLast(({ byte }) => byte === ENABLE);
  return rate ?? (enabled && { perSecond: mouseDefaults.sampleRate, byte: enabled, inRow: 0 });
}
