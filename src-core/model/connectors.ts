import type { Source } from "./sources.ts";

export interface ConnectorPin {
  readonly pin: number;
  readonly signal: string;
  /** Direction as the PC sees it. */
  readonly direction: "in" | "out" | "supply" | "none";
  /** What an adapter does with it. */
  readonly use: string;
}

export interface Connector {
  readonly name: string;
  readonly pins: readonly ConnectorPin[];
  readonly sources: readonly Source[];
}

/** Nine-pin connector of a PC's serial port (male). */
export const serialConnector: Connector = {
  name: "nine-pin serial, PC side",
  pins: [
    { pin: 1, signal: "DCD", direction: "in", use: "" },
    { pin: 2, signal: "RXD", direction: "in", use: "reports from the adapter" },
    { pin: 3, signal: "TXD", direction: "out", use: "rests at mark: negative supply" },
    { pin: 4, signal: "DTR", direction: "out", use: "positive supply" },
    { pin: 5, signal: "GND", direction: "supply", use: "ground" },
    { pin: 6, signal: "DSR", direction: "in", use: "tied to DTR for enumeration" },
    { pin: 7, signal: "RTS", direction: "out", use: "positive supply and reset" },
    { pin: 8, signal: "CTS", direction: "in", use: "" },
    { pin: 9, signal: "RI", direction: "in", use: "" },
  ],
  sources: [
    { document: "ninePinPinouts", place: "tables" },
    { document: "mouseManual", place: "Introduction" },
    { document: "externalComSpecification", place: "2.3" },
  ],
};

/** Six-pin mini-DIN of a PS/2 port. */
export const ps2Connector: Connector = {
  name: "six-pin mini-DIN",
  pins: [
    { pin: 1, signal: "data", direction: "none", use: "PS/2 data, both directions" },
    { pin: 2, signal: "not connected", direction: "none", use: "data of a second device on some notebooks" },
    { pin: 3, signal: "ground", direction: "supply", use: "ground" },
    { pin: 4, signal: "+5 V", direction: "supply", use: "supply of the mouse" },
    { pin: 5, signal: "clock", direction: "none", use: "PS/2 clock, both directions" },
    { pin: 6, signal: "not connected", direction: "none", use: "clock of a second device on some notebooks" },
  ],
  sources: [
    { document: "ps2ProtocolArticle", place: "connectors" },
    { document: "connectorReference", place: "5.5.3" },
    { document: "ps2PortEntry", place: "infobox" },
  ],
};
