import { type Connector, ps2Connector, serialConnector } from "../../model/connectors.ts";
import { rs232Levels } from "../../model/quantities/rs232-levels.ts";
import { cautions, type LineState, pinLevel, polarity } from "../../model/rs232.ts";
import { formatSources } from "../../model/sources.ts";
import { escaped, list, page, table } from "../markdown/markdown.ts";
import type { ReferencePage } from "./page.ts";
import { quantityTable } from "./quantity-table.ts";

const states: readonly LineState[] = ["mark", "space", "on", "off"];

export function levels(): ReferencePage {
  const title = "Levels, connectors and cautions";
  return {
    name: "levels.md",
    title,
    about:
      "voltages of RS-232, what they become behind a level shifter, pins of both connectors, and what can go wrong",
    pictures: [],
    text: page([
      `# ${title}`,
      "## Cautions",
      list([
        ...cautions.map(({ text, sources }) => `${escaped(text)} (${escaped(formatSources(sources))})`),
        "A level shifter that is wired wrongly can get hot enough to burn you: unplug at once. (common practice, no source)",
        "Unplug both sides before you rewire anything. (common practice, no source)",
        "The mains side of an old PC stays closed: what is inside can kill, even long after it was unplugged. (common practice, no source)",
        "Local rules come first. Where you are not sure, ask somebody who is qualified.",
      ]),
      "## What a level means",
      table(
        ["line", "at the connector", "at the pin, `shifter=inverting`", "at the pin, `shifter=none`"],
        states.map((state) => [
          state,
          polarity(state),
          pinLevel(state, "inverting") === 1 ? "high" : "low",
          pinLevel(state, "none") === 1 ? "high" : "low",
        ]),
      ),
      "Mark and space are what TXD and RXD say, on and off what RTS and DTR say. " +
        "Source: RS-232 overview SLLA607; clauses 2.1.3 and 2.1.5 of EIA/TIA-232-E.",
      quantityTable(rs232Levels),
      "## Connectors",
      ...[serialConnector, ps2Connector].flatMap(connectorParts),
    ]),
  };
}

function connectorParts({ name, pins, sources }: Connector): readonly string[] {
  return [
    `### ${name}`,
    table(
      ["pin", "signal", "for an adapter"],
      pins.map(({ pin, signal, use }) => [`${pin}`, signal, escaped(use)]),
    ),
    `Source: ${escaped(formatSources(sources))}.`,
  ];
}
