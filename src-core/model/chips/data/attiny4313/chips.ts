import type { AvrTables } from "../../avr-chip.ts";
import { pins } from "./pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

const attiny4313: AvrTables = {
  name: "attiny4313",
  printedName: "ATtiny4313",
  header: "avr/iotn4313.h",
  memory: {
    ramStart: 0x60,
    ramEnd: 0x15f,
    eepromEnd: 0xff,
    flashEnd: 0xfff,
    flashPage: 64,
    signature: [0x1e, 0x92, 0x0d],
  },
  vectorEntryBytes: 2,
  registers,
  vectors,
  pins,
  analogOnly: {},
  sketchInterrupts: [],
  ledPin: undefined,
};

/** ATtiny4313 and ATtiny2313A: as ATtiny2313, with pin-change interrupts on every pin. */
export const chips: readonly AvrTables[] = [
  attiny4313,
  {
    ...attiny4313,
    name: "attiny2313a",
    printedName: "ATtiny2313A",
    header: "avr/iotn2313a.h",
    memory: {
      ...attiny4313.memory,
      ramEnd: 0xdf,
      eepromEnd: 0x7f,
      flashEnd: 0x7ff,
      flashPage: 32,
      signature: [0x1e, 0x91, 0x0a],
    },
    differences: {
      without: ["SPH"],
      rows: `
PCMSK0   pcint      0x40  8
SPMCSR   flash      0x57  8  - - - CTPB RFLB PGWRT PGERS SPMEN
SP       cpu        0x5D  8
`,
    },
  },
];
