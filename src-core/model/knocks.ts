import type { Source } from "./sources.ts";

/** Sample rates that, set one after the other, make a mouse change its report layout. */
export interface Knock {
  readonly name: "wheel" | "five-button";
  /** Arguments of three "set sample rate" commands in a row. */
  readonly rates: readonly [number, number, number];
  /** What the mouse then answers to "get device id". */
  readonly id: number;
  readonly meaning: string;
  readonly sources: readonly Source[];
}

export const knocks: readonly Knock[] = [
  {
    name: "wheel",
    rates: [200, 100, 80],
    id: 0x03,
    meaning: "turns the four-byte wheel layout on; the sample rate is 80 afterwards, so set it again",
    sources: [
      { document: "ht82m35x", place: "p. 3" },
      { document: "sc84512", place: "p. 7" },
      { document: "psmouseSource", place: "id detection" },
    ],
  },
  {
    name: "five-button",
    rates: [200, 200, 80],
    id: 0x04,
    meaning: "turns the four-byte layout with five buttons on; one kernel sends the wheel knock first",
    sources: [
      { document: "sentelicNotes", place: "section A" },
      { document: "psmouseSource", place: "id detection" },
    ],
  },
];

/** The knock of exactly these rates. */
export function knockByRates(rates: readonly number[]): Knock | undefined {
  return knocks.find(
    (each) => each.rates.length === rates.length && each.rates.every((rate, index) => rate === rates[index]),
  );
}
