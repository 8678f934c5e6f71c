import type { LayoutTable } from "./layout.ts";

/**
 * -128 is left out of what is sent: its byte, 80, passes for a header. So would 81 to 87 (-127 to -121) after a
 * lost byte, which receivers live with.
 */
export const fiveByte: LayoutTable = {
  name: "five-byte",
  title: "five bytes of eight bits, three active-low buttons",
  side: "serial",
  rows: [
    "1   0   0   0   0   ~left ~middle ~right",
    "x7  x6  x5  x4  x3  x2    x1      x0",
    "y7  y6  y5  y4  y3  y2    y1      y0",
    "x7' x6' x5' x4' x3' x2'   x1'     x0'",
    "y7' y6' y5' y4' y3' y2'   y1'     y0'",
  ],
  optionalByte: undefined,
  movements: [
    { name: "x", bits: 8, min: -127, max: 127, parts: 2, positive: "right" },
    { name: "y", bits: 8, min: -127, max: 127, parts: 2, positive: "up" },
  ],
  meaning:
    "Two pairs of movements whose sum counts: the second is what moved while the first was being sent. A button that is down is a 0.",
  sources: [
    { document: "mouseManual", place: "table of the five-byte packet" },
    { document: "bsdMouseManual", place: "description" },
    { document: "dosDriverProtocol", place: "five-byte layout" },
  ],
  confidence: "read",
  disagreement: [
    {
      note: "The manual page draws bit 7 of the four movement bytes as 0; the others take all eight bits as a signed value, which every receiver needs for negative movements.",
      sources: [
        { document: "mouseManual", place: "table of the five-byte packet" },
        { document: "bsdMouseManual", place: "description" },
      ],
    },
  ],
};
