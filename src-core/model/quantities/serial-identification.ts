import type { Quantity } from "./quantity.ts";

/** What the adapter says about itself when the PC turns RTS on. */
export const serialIdentification: readonly Quantity[] = [
  {
    id: "serial.ident-delay",
    title: "RTS on to the identification byte",
    meaning: "The adapter sends its identification byte at the latest this long after the PC turned RTS on.",
    kind: "setting",
    unit: "ms",
    min: 0,
    typical: 14,
    max: 200,
    sources: [
      { document: "externalComSpecification", place: "2.1" },
      { document: "reactosSerenum", place: "probe sequence" },
      { document: "kudzuSource", place: "probe sequence" },
    ],
    confidence: "read",
    disagreement: [
      {
        note: "waits of other hosts",
        max: 240,
        sources: [
          { document: "serenumSample", place: "probe sequence" },
          { document: "mousedSource", place: "probe" },
        ],
        confidence: "read",
      },
      {
        note: "what mice do",
        typical: 14,
        sources: [{ document: "mouseManual", place: "Introduction" }],
        confidence: "read",
      },
    ],
    rules: ["serial/ident-late"],
  },
  {
    id: "serial.ident-character-gap",
    title: "gap inside the identification",
    meaning: "From one character of the identification to the next; the PC gives up after this time.",
    kind: "setting",
    unit: "ms",
    min: 0,
    typical: 63,
    max: 200,
    sources: [{ document: "reactosSerenum", place: "probe sequence" }],
    confidence: "read",
    disagreement: [
      {
        note: "waits of other hosts",
        max: 240,
        sources: [
          { document: "serenumSample", place: "probe sequence" },
          { document: "mousedSource", place: "probe" },
        ],
        confidence: "read",
      },
      {
        note: "what mice do between M and 3",
        typical: 63,
        sources: [{ document: "mouseManual", place: "Introduction" }],
        confidence: "read",
      },
    ],
    rules: ["serial/ident-late"],
  },
  {
    id: "serial.ident-byte",
    title: "identification byte",
    meaning: "First byte after RTS came on: M (4D), by which the PC knows a serial mouse.",
    kind: "setting",
    unit: "hex",
    typical: 0x4d,
    values: [0x4d],
    sources: [
      { document: "dosDriverProtocol", place: "identification" },
      { document: "externalComSpecification", place: "B.1" },
    ],
    confidence: "read",
    rules: ["serial/ident-wrong", "serial/ident-missing"],
  },
];
