import type { AvrTables } from "../../avr-chip.ts";
import { registers as registers32 } from "../atmega32/registers.ts";
import { vectors as vectors32 } from "../atmega32/vectors.ts";
import { pins } from "./pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

const atmega16: AvrTables = {
  name: "atmega16",
  printedName: "ATmega16",
  header: "avr/iom16.h",
  memory: {
    ramStart: 0x60,
    ramEnd: 0x45f,
    eepromEnd: 0x1ff,
    flashEnd: 0x3fff,
    flashPage: 128,
    signature: [0x1e, 0x94, 0x03],
  },
  vectorEntryBytes: 4,
  registers,
  vectors,
  pins,
  analogOnly: {},
  sketchInterrupts: [],
  ledPin: undefined,
};

/** ATmega16 and ATmega32: the same pins, interrupts in another order. */
export const chips: readonly AvrTables[] = [
  atmega16,
  {
    ...atmega16,
    name: "atmega32",
    printedName: "ATmega32",
    header: "avr/iom32.h",
    memory: {
      ...atmega16.memory,
      ramEnd: 0x85f,
      eepromEnd: 0x3ff,
      flashEnd: 0x7fff,
      signature: [0x1e, 0x95, 0x02],
    },
    registers: registers32,
    vectors: vectors32,
  },
];
