import type { Source } from "./sources.ts";

/** What a line of the serial side says. */
export type LineState = "mark" | "space" | "on" | "off";

/** Polarity of the voltage at the connector. RS-232 overview SLLA607; clauses 2.1.3 and 2.1.5 of EIA/TIA-232-E. */
export function polarity(state: LineState): "positive" | "negative" {
  switch (state) {
    case "mark":
    case "off":
      return "negative";
    case "space":
    case "on":
      return "positive";
  }
}

/**
 * Level at a microcontroller pin behind the level shifter. An inverting shifter turns every line over: idle TX
 * (mark) is high at the pin, RTS on reads low. Without a shifter a positive voltage is a high level.
 */
export function pinLevel(state: LineState, shifter: "inverting" | "none"): 0 | 1 {
  const positive = polarity(state) === "positive";
  return positive === (shifter === "none") ? 1 : 0;
}

/** Something that can destroy an adapter or its PC. */
export interface Caution {
  readonly text: string;
  readonly sources: readonly Source[];
}

export const cautions: readonly Caution[] = [
  {
    text: "RS-232 lines carry up to 25 V of either sign: never wire them to a microcontroller pin without a level shifter.",
    sources: [
      { document: "in145403", place: "receiver table (232-E)" },
      { document: "rs232Summary", place: "list" },
    ],
  },
  {
    text: "A PS/2 port is not made for plugging while the power is on; the surge can blow its fuse.",
    sources: [
      { document: "ps2ProtocolArticle", place: "connectors" },
      { document: "ps2PortEntry", place: "hot plugging" },
    ],
  },
  {
    text: "Clock and data are open collector: drive them low or let them go, never drive them high.",
    sources: [
      { document: "ps2ProtocolArticle", place: "Electrical Interface" },
      { document: "reference560", place: "p. 2-4" },
    ],
  },
  {
    text: "DTR, RTS and TXD give about 10 mA each: enough for a serial mouse, not for a PS/2 mouse of up to 100 mA.",
    sources: [
      { document: "mouseManual", place: "Introduction" },
      { document: "ps2ProtocolArticle", place: "power summary" },
    ],
  },
];
