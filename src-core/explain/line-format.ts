import type { WantedLine } from "../facts/serial/serial-facts.ts";
import { plain } from "../figures.ts";
import { bitsPerFrame, byteTimeMs, formatLineFormat, lineFormatSource } from "../model/line-formats.ts";
import { formatSource } from "../model/sources.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";

/** The value that sets the data bits, parity and stop bits of a serial port. */
export function explainLineFormat({ facts, file, offset }: Place): Explanation | undefined {
  for (const { format: set } of facts.serial.setUps) {
    const { format, span, register } = set;
    if (format === undefined || span === undefined || !holds(span, file, offset)) continue;
    const baud = facts.serial.wantedBaud?.baud;
    const parity = format.parity === "none" ? "no parity bit" : `${format.parity} parity`;
    const stop = format.stopBits === 1 ? "one stop bit" : "two stop bits";
    return explanation(
      span,
      `${formatLineFormat(format)}: ${format.dataBits} data bits, ${parity}, ${stop}`,
      [
        register === undefined ? undefined : `Register ${register}.`,
        timeLine(bitsPerFrame(format), baud === undefined ? undefined : byteTimeMs(format, baud), baud),
        wantedLine(facts.serial.wantedLine),
        `Source: ${formatSource(lineFormatSource)}.`,
      ],
    );
  }
  return undefined;
}

function timeLine(bits: number, ms: number | undefined, baud: number | undefined): string {
  const time = ms === undefined ? "" : `, ${plain(ms, 2)} ms at ${baud} baud`;
  return `With the start bit a byte takes ${bits} bit times${time}.`;
}

function wantedLine(wanted: WantedLine | undefined): string | undefined {
  if (wanted === undefined) return undefined;
  return wanted.kind === "layout"
    ? `The PC expects the ${wanted.layout.name} layout, which has ${wanted.layout.dataBits} data bits.`
    : `Said to be ${formatLineFormat(wanted.format)}.`;
}
