import { plain } from "../../figures.ts";
import {
  acceptance,
  bitsPerFrame,
  byteTimeMs,
  formatLineFormat,
  type LineFormat,
  lineFormatSource,
  parseLineFormat,
} from "../../model/line-formats.ts";
import { quantity } from "../../model/quantities.ts";
import { reportLayouts } from "../../model/report-layouts.ts";
import { citation } from "./citation.ts";
import { type Entry, type Topic, texts } from "./topic.ts";

/** Any line format, such as `7N1` or `8E2`; undefined for another word. */
export function lineFormatEntry(word: string): Entry | undefined {
  const format = parseLineFormat(word);
  return format && { words: [word], topic: () => lineFormatTopic(format) };
}

function lineFormatTopic(format: LineFormat): Topic {
  const { dataBits, parity, stopBits } = format;
  const name = formatLineFormat(format);
  const baud = quantity("serial.baud")?.typical;
  const time =
    baud === undefined ? "" : ` and takes ${plain(byteTimeMs(format, baud), 2)} ms at ${baud} baud`;
  return {
    name,
    kind: "line format",
    title: `${dataBits} data bits, ${parity === "none" ? "no parity bit" : `${parity} parity`}, ${stopBits === 1 ? "one stop bit" : "two stop bits"}`,
    parts: [
      ...texts(`With its start bit a byte has ${bitsPerFrame(format)} bits${time}.`),
      {
        kind: "list",
        items: reportLayouts
          .filter(({ side }) => side === "serial")
          .map((layout) => acceptedBy(layout, format)),
      },
      ...texts(citation([lineFormatSource])),
    ],
    related: ["serial.data-bits", "serial.stop-bits", "serial.bit-time", "serial/line-format"],
  };
}

function acceptedBy(layout: (typeof reportLayouts)[number], format: LineFormat): string {
  const answer = acceptance(layout, format);
  switch (answer.kind) {
    case "accepted":
      return `\`${layout.name}\`: a PC reads it`;
    case "accepted-with-bit-7-set":
      return `\`${layout.name}\`: a PC reads it where bit 7 of every byte is 1, as a stop bit is`;
    case "refused":
      return `\`${layout.name}\`: no, ${answer.reason}`;
  }
}
