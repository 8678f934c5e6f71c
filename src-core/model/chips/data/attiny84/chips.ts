import type { AvrTables } from "../../avr-chip.ts";
import { pins } from "./pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

const attiny84: AvrTables = {
  name: "attiny84",
  printedName: "ATtiny84",
  header: "avr/iotnx4.h",
  memory: {
    ramStart: 0x60,
    ramEnd: 0x25f,
    eepromEnd: 0x1ff,
    flashEnd: 0x1fff,
    flashPage: 64,
    signature: [0x1e, 0x93, 0x0c],
  },
  vectorEntryBytes: 2,
  registers,
  vectors,
  pins,
  analogOnly: {},
  sketchInterrupts: [],
  ledPin: undefined,
};

/** ATtiny24, 44 and 84. */
export const chips: readonly AvrTables[] = [
  attiny84,
  {
    ...attiny84,
    name: "attiny44",
    printedName: "ATtiny44",
    memory: {
      ...attiny84.memory,
      ramEnd: 0x15f,
      eepromEnd: 0xff,
      flashEnd: 0xfff,
      signature: [0x1e, 0x92, 0x07],
    },
  },
  {
    ...attiny84,
    name: "attiny24",
    printedName: "ATtiny24",
    memory: {
      ...attiny84.memory,
      ramEnd: 0xdf,
      eepromEnd: 0x7f,
      flashEnd: 0x7ff,
      flashPage: 32,
      signature: [0x1e, 0x91, 0x0b],
    },
    differences: { without: ["SPH"], rows: "SP cpu 0x5D 8" },
  },
];
