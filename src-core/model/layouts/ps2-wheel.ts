import type { LayoutTable } from "./layout.ts";
import { ps2Standard } from "./ps2-standard.ts";

export const ps2Wheel: LayoutTable = {
  name: "ps2-wheel",
  title: "four bytes of a PS/2 wheel mouse (id 03)",
  side: "ps2",
  rows: [...ps2Standard.rows, "wheel7 wheel6 wheel5 wheel4 wheel3 wheel2 wheel1 wheel0"],
  optionalByte: undefined,
  movements: [
    ...ps2Standard.movements,
    { name: "wheel", bits: 8, min: -8, max: 7, parts: 1, positive: "towards the user" },
  ],
  meaning: "The plain report and a signed byte of wheel.",
  sources: [
    { document: "ht82m35x", place: "p. 3" },
    { document: "paw3402", place: "6.2" },
  ],
  confidence: "read",
  disagreement: [
    {
      note: "The wheel field has eight bits; one chip clips it to -7 to 7. Accept the byte, expect -8 to 7.",
      sources: [
        { document: "ht82m35x", place: "p. 3" },
        { document: "paw3402", place: "6.2" },
      ],
    },
  ],
};
