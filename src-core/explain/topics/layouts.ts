import { bytesText } from "../../figures.ts";
import { identificationOf } from "../../model/identification.ts";
import type { MovementField, ReportLayout } from "../../model/layouts/layout.ts";
import { formatLineFormat, preferredLineFormat } from "../../model/line-formats.ts";
import { reportLayouts } from "../../model/report-layouts.ts";
import { formatSources } from "../../model/sources.ts";
import { citation } from "./citation.ts";
import { type Entry, type Part, type Topic, texts } from "./topic.ts";

/** The layouts of reports, with the bits of each byte. */
export function layoutEntries(): readonly Entry[] {
  return reportLayouts.map((layout) => ({
    words: [layout.name, layout.title],
    topic: () => layoutTopic(layout),
  }));
}

function layoutTopic(layout: ReportLayout): Topic {
  const { name, side, title, meaning, movements, sources, confidence, disagreement } = layout;
  return {
    name,
    kind: side === "serial" ? "report to the PC" : "report of the mouse",
    title,
    parts: [
      ...texts(meaning),
      bitTable(layout),
      ...texts(legend(layout)),
      { kind: "list", items: movements.map(movementText) },
      ...texts(
        identificationText(layout),
        citation(sources, confidence),
        ...disagreement.map(({ note, sources: others }) => `Elsewhere: ${note} (${formatSources(others)}).`),
      ),
    ],
    related: [
      ...(side === "serial" ? [formatLineFormat(preferredLineFormat(layout))] : []),
      "report/layout",
      "report/sync-bit",
      "report/button-map",
    ],
  };
}

/** A row for each byte, its bits from the highest down. */
export function bitTable({ rows, dataBits, optionalByte }: ReportLayout): Part {
  const bits = Array.from({ length: dataBits }, (_, index) => `bit ${dataBits - 1 - index}`);
  return {
    kind: "table",
    head: ["byte", ...bits],
    rows: rows.map((row, index) => [
      `${index + 1}${index === optionalByte ? " (where needed)" : ""}`,
      ...row.trim().split(/\s+/),
    ]),
  };
}

function legend({ rows }: ReportLayout): string {
  const marks = [
    ["~", "`~` marks a button that is 0 while it is down"],
    ["!", "`!` a bit that is 1 where the movement did not fit"],
    ["'", "`'` the second value of a movement"],
    ["-", "`-` a bit that nobody looks at"],
  ] as const;
  const used = marks.filter(([mark]) => rows.some((row) => row.includes(mark))).map(([, text]) => text);
  return used.length === 0 ? "" : `${used.join(", ")}.`;
}

function movementText({ name, bits, min, max, parts, positive }: MovementField): string {
  const halves = parts === 2 ? ", the sum of two values" : "";
  return `\`${name}\`: ${min} to ${max} counts in ${bits} bits${halves}; positive is ${positive}`;
}

function identificationText({ name }: ReportLayout): string | undefined {
  const known = identificationOf(name);
  if (known === undefined) return undefined;
  const shown = known.sequences.filter(({ length }) => length > 0).map((bytes) => `\`${bytesText(bytes)}\``);
  const listed = shown.length === 0 ? "" : `: ${shown.join(", ")}`;
  return `When RTS comes on, the mouse sends ${known.meaning}${listed} (${formatSources(known.sources)}).`;
}
