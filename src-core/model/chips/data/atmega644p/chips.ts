import type { AvrTables } from "../../avr-chip.ts";
import { registers as registers1284p } from "../atmega1284p/registers.ts";
import { vectors as vectors1284p } from "../atmega1284p/vectors.ts";
import { pins } from "./pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

const atmega644p: AvrTables = {
  name: "atmega644p",
  printedName: "ATmega644P",
  header: "avr/iom644p.h",
  memory: {
    ramStart: 0x100,
    ramEnd: 0x10ff,
    eepromEnd: 0x7ff,
    flashEnd: 0xffff,
    flashPage: 256,
    signature: [0x1e, 0x96, 0x0a],
  },
  vectorEntryBytes: 4,
  registers,
  vectors,
  pins,
  analogOnly: {},
  sketchInterrupts: [],
  ledPin: undefined,
};

/** ATmega644P and ATmega1284P: the same pins, two USARTs; the larger one has a timer more. */
export const chips: readonly AvrTables[] = [
  atmega644p,
  {
    ...atmega644p,
    name: "atmega1284p",
    printedName: "ATmega1284P",
    header: "avr/iom1284p.h",
    memory: {
      ...atmega644p.memory,
      ramEnd: 0x40ff,
      eepromEnd: 0xfff,
      flashEnd: 0x1ffff,
      signature: [0x1e, 0x97, 0x05],
    },
    registers: registers1284p,
    vectors: vectors1284p,
  },
];
