import type { AvrTables } from "../../avr-chip.ts";
import { pins } from "./pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

/** ATmega8, which keeps UBRRH and UCSRC at one address. */
export const chips: readonly AvrTables[] = [
  {
    name: "atmega8",
    printedName: "ATmega8",
    header: "avr/iom8.h",
    memory: {
      ramStart: 0x60,
      ramEnd: 0x45f,
      eepromEnd: 0x1ff,
      flashEnd: 0x1fff,
      flashPage: 64,
      signature: [0x1e, 0x93, 0x07],
    },
    vectorEntryBytes: 2,
    registers,
    vectors,
    pins,
    analogOnly: {},
    sketchInterrupts: ["PD2", "PD3"],
    ledPin: 13,
  },
];
