import { bytesText, plain } from "../../figures.ts";
import { identificationOf } from "../../model/identification.ts";
import {
  formatLineFormat,
  lineFormatSource,
  preferredLineFormat,
  reportsPerSecond,
} from "../../model/line-formats.ts";
import { plugAndPlay } from "../../model/quantities/plug-and-play.ts";
import { serialControlLines } from "../../model/quantities/serial-control-lines.ts";
import { serialIdentification } from "../../model/quantities/serial-identification.ts";
import { serialLine } from "../../model/quantities/serial-line.ts";
import { quantity } from "../../model/quantities.ts";
import { layouts, reportLayouts } from "../../model/report-layouts.ts";
import { formatSource, formatSources } from "../../model/sources.ts";
import { byteToPc, identificationAfterRts } from "../diagrams/serial-line.ts";
import { waveSvg } from "../diagrams/wave-svg.ts";
import { escaped, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";
import { quantityTable } from "./quantity-table.ts";

export function serialSide(): ReferencePage {
  const title = "The serial side";
  const usual = layouts["two-button"];
  const format = preferredLineFormat(usual);
  const letter = identificationOf(usual.name)?.sequences[0]?.[0] ?? 0;
  const byte = byteToPc(letter, format);
  const asking = identificationAfterRts(letter, format);
  return {
    name: "serial-side.md",
    title,
    about: "what a serial mouse says when RTS comes on, its line format, and how much the line can carry",
    pictures: [
      { name: "byte-to-pc.svg", text: waveSvg(byte) },
      { name: "identification.svg", text: waveSvg(asking) },
    ],
    text: page([
      `# ${title}`,
      "## One byte",
      `![${byte.description}](byte-to-pc.svg)`,
      byte.description,
      quantityTable(serialLine),
      "## Line formats, and what the line can carry",
      capacityTable(),
      `Source of the line formats: ${escaped(formatSource(lineFormatSource))}; reports per second are computed.`,
      "## What the mouse says it is",
      `![${asking.description}](identification.svg)`,
      asking.description,
      identificationTable(),
      quantityTable(serialIdentification),
      "## The control lines",
      quantityTable(serialControlLines),
      "## Enumeration",
      "Newer PCs ask with more steps, timed by T1 to T7 of the specification.",
      quantityTable(plugAndPlay),
    ]),
  };
}

function capacityTable(): string {
  const baud = quantity("serial.baud")?.typical ?? 0;
  return table(
    ["layout", "line format", `reports per second at ${baud} baud`],
    reportLayouts
      .filter(({ side }) => side === "serial")
      .flatMap((layout) => {
        const format = preferredLineFormat(layout);
        const carried = (bytes: number): string => plain(reportsPerSecond(format, baud, bytes), 1);
        const { length } = layout.bytes;
        const rate =
          layout.optionalByte === undefined
            ? carried(length)
            : `${carried(length - 1)}, with the optional byte ${carried(length)}`;
        return [[`[\`${layout.name}\`](reports.md#${layout.name})`, formatLineFormat(format), rate]];
      }),
  );
}

function identificationTable(): string {
  return table(
    ["layout", "sent when RTS comes on", "where it stands"],
    reportLayouts.flatMap(({ name }) => {
      const known = identificationOf(name);
      if (known === undefined) return [];
      const bytes = known.sequences.map((each) => (each.length === 0 ? "nothing" : `\`${bytesText(each)}\``));
      return [
        [`\`${name}\``, `${known.meaning}: ${bytes.join(" or ")}`, escaped(formatSources(known.sources))],
      ];
    }),
  );
}
