import type { LayoutTable } from "./layout.ts";
import { twoButton } from "./two-button.ts";

export const wheel: LayoutTable = {
  name: "wheel",
  title: "four bytes of seven bits, middle button and wheel",
  side: "serial",
  rows: [...twoButton.rows, "0 - middle wheel3 wheel2 wheel1 wheel0"],
  optionalByte: undefined,
  movements: [
    ...twoButton.movements,
    { name: "wheel", bits: 4, min: -8, max: 7, parts: 1, positive: "towards the user" },
  ],
  meaning: "The two-button report and always a fourth byte with the middle button and four bits of wheel.",
  sources: [
    { document: "sermouseSource", place: "decode" },
    { document: "em84520", place: "p. 3" },
    { document: "mousedSource", place: "decode" },
  ],
  confidence: "read",
  disagreement: [],
};
