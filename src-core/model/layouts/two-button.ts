import type { LayoutTable } from "./layout.ts";

export const twoButton: LayoutTable = {
  name: "two-button",
  title: "three bytes of seven bits, two buttons",
  side: "serial",
  rows: [
    "1 left right y7 y6 x7 x6", //
    "0 x5   x4    x3 x2 x1 x0",
    "0 y5   y4    y3 y2 y1 y0",
  ],
  optionalByte: undefined,
  movements: [
    { name: "x", bits: 8, min: -128, max: 127, parts: 1, positive: "right" },
    { name: "y", bits: 8, min: -128, max: 127, parts: 1, positive: "down" },
  ],
  meaning:
    "The serial report that every PC driver knows: 1200 baud, seven data bits; only the first byte has bit 6 set.",
  sources: [
    { document: "mouseManual", place: "table of the three-byte packet" },
    { document: "dosDriverProtocol", place: "three-byte layout" },
  ],
  confidence: "read",
  disagreement: [],
};
