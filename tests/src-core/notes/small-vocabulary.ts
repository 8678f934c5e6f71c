import type { Term, Vocabulary } from "../../../src-core/notes/vocabulary.ts";

/** A vocabulary of a few names, so that tests of the grammar do not depend on the model. */

function term(name: string, title = `about ${name}`): Term {
  return { name, title, documentation: `All about ${name}.` };
}

const PINS: readonly Term[] = ["0", "1", "2", "3", "4", "13", "A0", "A3", "PD2", "PD3", "PD4", "PC3"].map(
  (name) => term(name),
);

export const SMALL_VOCABULARY: Vocabulary = {
  chips: [
    { ...term("atmega328p"), printedName: "ATmega328P", pins: PINS, uarts: [0] },
    { ...term("atmega2560"), printedName: "ATmega2560", pins: [], uarts: [0, 1, 2, 3] },
    { ...term("attiny85"), printedName: "ATtiny85", pins: [term("0"), term("PB0")], uarts: [] },
  ],
  layouts: [
    { ...term("two-button"), side: "serial", fields: ["x", "y", "left", "right"] },
    { ...term("wheel"), side: "serial", fields: ["x", "y", "left", "right", "middle", "wheel"] },
    { ...term("ps2-standard"), side: "ps2", fields: ["x", "y", "left", "right", "middle"] },
  ],
  quantities: ["ps2.request-hold", "ps2.reply-timeout", "serial.bit-time", "serial.baud"].map((name) =>
    term(name),
  ),
  lineFormats: ["7N1", "8N1"].map((name) => term(name)),
  strokes: ["circle", "nudge"].map((name) => term(name)),
  mice: ["plain", "wheel"].map((name) => term(name)),
  pcs: ["rts-toggle", "hurried"].map((name) => term(name)),
  bauds: ["1200", "9600"].map((name) => term(name)),
  rules: ["ps2/wait-forever", "ps2/no-pullup", "serial/baud-error", "note/unattached"].map((name) =>
    term(name),
  ),
};
