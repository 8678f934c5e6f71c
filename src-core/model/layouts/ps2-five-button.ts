import type { LayoutTable } from "./layout.ts";
import { ps2Standard } from "./ps2-standard.ts";

export const ps2FiveButton: LayoutTable = {
  name: "ps2-five-button",
  title: "four bytes of a PS/2 mouse with five buttons (id 04)",
  side: "ps2",
  rows: [...ps2Standard.rows, "0 0 button5 button4 wheel3 wheel2 wheel1 wheel0"],
  optionalByte: undefined,
  movements: [
    ...ps2Standard.movements,
    { name: "wheel", bits: 4, min: -8, max: 7, parts: 1, positive: "towards the user" },
  ],
  meaning: "The plain report and a byte with two more buttons and four bits of wheel.",
  sources: [
    { document: "ht82m35x", place: "p. 3" },
    { document: "sentelicNotes", place: "section A" },
    { document: "psmouseSource", place: "packet decode" },
  ],
  confidence: "read",
  disagreement: [
    {
      note: "One chip prints the overflow bits of this form as 0, another keeps them: do not use them for framing.",
      sources: [
        { document: "ht82m35x", place: "p. 3" },
        { document: "sentelicNotes", place: "section A" },
      ],
    },
  ],
};
