import type { AvrTables } from "../../avr-chip.ts";
import { pins } from "../atmega328p/pins.ts";
import { registers } from "./registers.ts";
import { vectors } from "./vectors.ts";

const atmega168: AvrTables = {
  name: "atmega168",
  printedName: "ATmega168",
  header: "avr/iomx8.h",
  memory: {
    ramStart: 0x100,
    ramEnd: 0x4ff,
    eepromEnd: 0x1ff,
    flashEnd: 0x3fff,
    flashPage: 128,
    signature: [0x1e, 0x94, 0x06],
  },
  vectorEntryBytes: 4,
  registers,
  vectors,
  pins,
  analogOnly: { A6: "ADC6", A7: "ADC7" },
  sketchInterrupts: ["PD2", "PD3"],
  ledPin: 13,
};

const smaller: AvrTables = { ...atmega168, vectorEntryBytes: 2 };

/** ATmega48, 88 and 168 without P: pins as ATmega328P, registers by an older header. */
export const chips: readonly AvrTables[] = [
  atmega168,
  {
    ...smaller,
    name: "atmega88",
    printedName: "ATmega88",
    memory: { ...atmega168.memory, flashEnd: 0x1fff, flashPage: 64, signature: [0x1e, 0x93, 0x0a] },
  },
  {
    ...smaller,
    name: "atmega48",
    printedName: "ATmega48",
    memory: {
      ...atmega168.memory,
      ramEnd: 0x2ff,
      eepromEnd: 0xff,
      flashEnd: 0xfff,
      flashPage: 64,
      signature: [0x1e, 0x92, 0x05],
    },
    differences: {
      without: [],
      rows: `
MCUCR    sleep      0x55  8  - - - PUD - - - -
SPMCSR   flash      0x57  8  SPMIE - - - BLBSET PGWRT PGERS SELFPRGEN/SPMEN
`,
    },
  },
];
