import type { LayoutTable } from "./layout.ts";

export const ps2Standard: LayoutTable = {
  name: "ps2-standard",
  title: "three bytes of a plain PS/2 mouse",
  side: "ps2",
  rows: [
    "y! x! y8 x8 1  middle right left",
    "x7 x6 x5 x4 x3 x2     x1    x0",
    "y7 y6 y5 y4 y3 y2     y1    y0",
  ],
  optionalByte: undefined,
  movements: [
    { name: "x", bits: 9, min: -255, max: 255, parts: 1, positive: "right" },
    { name: "y", bits: 9, min: -255, max: 255, parts: 1, positive: "up" },
  ],
  meaning:
    "Movements of nine bits: the sign of x and y stands in the first byte, the low eight bits in a byte each.",
  sources: [
    { document: "ht82m35x", place: "p. 3" },
    { document: "paw3402", place: "6.1" },
    { document: "psmManual", place: "data packet" },
  ],
  confidence: "read",
  disagreement: [
    {
      note: "The range is -256 to 255 (psm(4)) or -255 to 255 (other texts): accept the first, send the second.",
      sources: [{ document: "psmManual", place: "data packet" }],
    },
  ],
};
