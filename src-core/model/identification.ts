import type { LayoutName } from "./layouts/layout.ts";
import type { Confidence, Source } from "./sources.ts";

/** What a serial mouse sends when RTS comes on, by the layout of its reports. */
export interface Identification {
  readonly layout: LayoutName;
  /** Sequences that PCs know, the usual one first; an empty one says that nothing is sent. */
  readonly sequences: readonly (readonly number[])[];
  readonly meaning: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

const identifications: readonly Identification[] = [
  {
    layout: "two-button",
    sequences: [[0x4d]],
    meaning: "M",
    sources: [
      { document: "dosDriverProtocol", place: "identification" },
      { document: "externalComSpecification", place: "B.1" },
    ],
    confidence: "read",
  },
  {
    layout: "middle-button",
    sequences: [[0x4d, 0x33]],
    meaning: "M3",
    sources: [
      { document: "dosDriverProtocol", place: "identification" },
      { document: "mouseManual", place: "Introduction" },
      { document: "ht6513b", place: "p. 7" },
    ],
    confidence: "read",
  },
  {
    layout: "wheel",
    sequences: [[0x4d, 0x5a, 0x40, 0x00, 0x00, 0x00]],
    meaning: "MZ@ and three zeros",
    sources: [
      { document: "dosDriverProtocol", place: "identification" },
      { document: "em84520", place: "p. 3" },
    ],
    confidence: "read",
  },
  {
    layout: "five-byte",
    sequences: [[], [0x48], [0x6d]],
    meaning: "nothing; some send H, some m",
    sources: [
      { document: "dosDriverProtocol", place: "identification (none)" },
      { document: "mousedSource", place: "identification (H)" },
      { document: "ht6513b", place: "p. 7 (m)" },
    ],
    confidence: "read",
  },
];

/** What a mouse with this layout sends; undefined for PS/2 layouts. */
export function identificationOf(layout: LayoutName): Identification | undefined {
  return identifications.find((each) => each.layout === layout);
}

/** M as a receiver with eight data bits sees it: bit 7 is the first stop bit. HT6513 data sheet, 1996. */
export const IDENTIFICATION_WITH_BIT_7 = 0xcd;
