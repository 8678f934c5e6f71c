import type { LayoutTable } from "./layout.ts";
import { twoButton } from "./two-button.ts";

export const middleButton: LayoutTable = {
  name: "middle-button",
  title: "three bytes of seven bits, a fourth for the middle button",
  side: "serial",
  rows: [...twoButton.rows, "0 middle - - - - -"],
  optionalByte: 3,
  movements: twoButton.movements,
  meaning:
    "The two-button report, and a fourth byte while the middle button is down and once more when it is let go.",
  sources: [
    { document: "mouseManual", place: "packet with a fourth byte" },
    { document: "sermouseSource", place: "decode" },
  ],
  confidence: "read",
  disagreement: [
    {
      note: "The fourth byte is sent while the button is down (manual) or on each change (moused.c).",
      sources: [
        { document: "mouseManual", place: "packet with a fourth byte" },
        { document: "mousedSource", place: "decode" },
      ],
    },
    {
      note: "Low bits of the fourth byte differ (00/20, 01/21, 02/22 for up/down): receivers mask them out.",
      sources: [{ document: "mousedSource", place: "decode" }],
    },
  ],
};
