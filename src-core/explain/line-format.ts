import type { SetFormat, WantedLine } from "../facts/serial/serial-facts.ts";
import { hexText, plain } from "../figures.ts";
import {
  acceptance,
  bitsPerFrame,
  byteTimeMs,
  formatLineFormat,
  type LineFormat,
  lineFormatSource,
} from "../model/line-formats.ts";
import { formatSource } from "../model/sources.ts";
import { type Explanation, explanation, holds } from "./explanation.ts";
import type { Place } from "./place.ts";
import { registerUse } from "./register-use.ts";

/** The value that sets the data bits, parity and stop bits of a serial port. */
export function explainLineFormat(place: Place): Explanation | undefined {
  const { facts, file, offset } = place;
  for (const { format: set } of facts.serial.setUps) {
    const { format, span } = set;
    if (format === undefined || span === undefined || !holds(span, file, offset)) continue;
    const baud = facts.serial.wantedBaud?.baud;
    const parity = format.parity === "none" ? "no parity bit" : `${format.parity} parity`;
    const stop = format.stopBits === 1 ? "one stop bit" : "two stop bits";
    return explanation(
      span,
      `${formatLineFormat(format)}: ${format.dataBits} data bits, ${parity}, ${stop}`,
      [
        registerLine(place, set),
        timeLine(bitsPerFrame(format), baud === undefined ? undefined : byteTimeMs(format, baud), baud),
        wantedLine(format, facts.serial.wantedLine),
        `Source: ${formatSource(lineFormatSource)}.`,
      ],
    );
  }
  return undefined;
}

/** `UCSR0C = 0x06: UCSZ01 and UCSZ00 are 1.` */
function registerLine(place: Place, { register, assigned }: SetFormat): string | undefined {
  if (register === undefined) return undefined;
  if (assigned === undefined) return `Register ${register}.`;
  const figure = `${register} = ${hexText(assigned)}`;
  const use = registerUse(place);
  if (use?.register.name !== register) return `${figure}.`;
  const ones = [...use.register.bits].reverse().filter(({ bit }) => (assigned & (1 << bit)) !== 0);
  const names = new Map([...ones].reverse().map(({ bit, name }) => [bit, `\`${name}\` (bit ${bit})`]));
  const shown = [...names].sort(([a], [b]) => b - a).map(([, text]) => text);
  return shown.length === 0
    ? `${figure}: all bits are 0.`
    : `${figure}. Bits that are 1: ${shown.join(", ")}.`;
}

function timeLine(bits: number, ms: number | undefined, baud: number | undefined): string {
  const time = ms === undefined ? "" : `, ${plain(ms, 2)} ms at ${baud} baud`;
  return `With the start bit a byte takes ${bits} bit times${time}.`;
}

function wantedLine(format: LineFormat, wanted: WantedLine | undefined): string | undefined {
  if (wanted === undefined) return undefined;
  if (wanted.kind === "format") {
    const said = formatLineFormat(wanted.format);
    return said === formatLineFormat(format) ? `As said: ${said}.` : `A note or edgewise.json says ${said}.`;
  }
  const { name, dataBits } = wanted.layout;
  const layout = `The PC expects the ${name} layout, which has ${dataBits} data bits`;
  const accepted = acceptance(wanted.layout, format);
  switch (accepted.kind) {
    case "accepted":
      return `${layout}: it can read this.`;
    case "accepted-with-bit-7-set":
      return `${layout}: it can read this only if bit 7 of every byte is 1.`;
    case "refused":
      return `${layout}: it cannot read this, because ${accepted.reason}.`;
  }
}
