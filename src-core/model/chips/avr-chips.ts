import type { AvrTables } from "./avr-chip.ts";
import { chips as chipsLike8 } from "./data/atmega8/chips.ts";
import { chips as chipsLike16 } from "./data/atmega16/chips.ts";
import { pins as pins32u4 } from "./data/atmega32u4/pins.ts";
import { registers as registers32u4 } from "./data/atmega32u4/registers.ts";
import { vectors as vectors32u4 } from "./data/atmega32u4/vectors.ts";
import { chips as chipsLike168 } from "./data/atmega168/chips.ts";
import { pins as pins328p } from "./data/atmega328p/pins.ts";
import { registers as registers328p } from "./data/atmega328p/registers.ts";
import { vectors as vectors328p } from "./data/atmega328p/vectors.ts";
import { chips as chipsLike644p } from "./data/atmega644p/chips.ts";
import { pins as pins2560 } from "./data/atmega2560/pins.ts";
import { registers as registers2560 } from "./data/atmega2560/registers.ts";
import { vectors as vectors2560 } from "./data/atmega2560/vectors.ts";
import { chips as chipsLike84 } from "./data/attiny84/chips.ts";
import { pins as pins85 } from "./data/attiny85/pins.ts";
import { registers as registers85 } from "./data/attiny85/registers.ts";
import { vectors as vectors85 } from "./data/attiny85/vectors.ts";
import { pins as pins2313 } from "./data/attiny2313/pins.ts";
import { registers as registers2313 } from "./data/attiny2313/registers.ts";
import { vectors as vectors2313 } from "./data/attiny2313/vectors.ts";
import { chips as chipsLike4313 } from "./data/attiny4313/chips.ts";

const atmega328p: AvrTables = {
  name: "atmega328p",
  printedName: "ATmega328P",
  header: "avr/iom328p.h",
  memory: {
    ramStart: 0x100,
    ramEnd: 0x8ff,
    eepromEnd: 0x3ff,
    flashEnd: 0x7fff,
    flashPage: 128,
    signature: [0x1e, 0x95, 0x0f],
  },
  vectorEntryBytes: 4,
  registers: registers328p,
  vectors: vectors328p,
  pins: pins328p,
  analogOnly: { A6: "ADC6", A7: "ADC7" },
  sketchInterrupts: ["PD2", "PD3"],
  ledPin: 13,
};

const atmega2560: AvrTables = {
  name: "atmega2560",
  printedName: "ATmega2560",
  header: "avr/iom2560.h",
  memory: {
    ramStart: 0x200,
    ramEnd: 0x21ff,
    eepromEnd: 0xfff,
    flashEnd: 0x3ffff,
    flashPage: 256,
    signature: [0x1e, 0x98, 0x01],
  },
  vectorEntryBytes: 4,
  registers: registers2560,
  vectors: vectors2560,
  pins: pins2560,
  analogOnly: {},
  sketchInterrupts: ["PE4", "PE5", "PD0", "PD1", "PD2", "PD3"],
  ledPin: 13,
};

const attiny85: AvrTables = {
  name: "attiny85",
  printedName: "ATtiny85",
  header: "avr/iotn85.h",
  memory: {
    ramStart: 0x60,
    ramEnd: 0x25f,
    eepromEnd: 0x1ff,
    flashEnd: 0x1fff,
    flashPage: 64,
    signature: [0x1e, 0x93, 0x0b],
  },
  vectorEntryBytes: 2,
  registers: registers85,
  vectors: vectors85,
  pins: pins85,
  analogOnly: {},
  sketchInterrupts: ["PB2"],
  ledPin: 1,
};

/** The AVR chips; siblings share tables, which the headers confirm row by row. */
export const avrTables: readonly AvrTables[] = [
  atmega328p,
  {
    ...atmega328p,
    name: "atmega328",
    printedName: "ATmega328",
    memory: { ...atmega328p.memory, signature: [0x1e, 0x95, 0x14] },
  },
  {
    ...atmega328p,
    name: "atmega168p",
    printedName: "ATmega168P",
    header: "avr/iom168p.h",
    memory: {
      ...atmega328p.memory,
      ramEnd: 0x4ff,
      eepromEnd: 0x1ff,
      flashEnd: 0x3fff,
      signature: [0x1e, 0x94, 0x0b],
    },
    differences: { without: [], rows: "EEARH eeprom 0x42 8 - - - - - - - EEAR8" },
  },
  {
    ...atmega328p,
    name: "atmega88p",
    printedName: "ATmega88P",
    header: "avr/iom88p.h",
    memory: {
      ...atmega328p.memory,
      ramEnd: 0x4ff,
      eepromEnd: 0x1ff,
      flashEnd: 0x1fff,
      flashPage: 64,
      signature: [0x1e, 0x93, 0x0f],
    },
    vectorEntryBytes: 2,
    differences: { without: [], rows: "EEARH eeprom 0x42 8 - - - - - - - EEAR8" },
  },
  {
    name: "atmega32u4",
    printedName: "ATmega32U4",
    header: "avr/iom32u4.h",
    memory: {
      ramStart: 0x100,
      ramEnd: 0xaff,
      eepromEnd: 0x3ff,
      flashEnd: 0x7fff,
      flashPage: 128,
      signature: [0x1e, 0x95, 0x87],
    },
    vectorEntryBytes: 4,
    registers: registers32u4,
    vectors: vectors32u4,
    pins: pins32u4,
    analogOnly: {},
    sketchInterrupts: ["PD0", "PD1", "PD2", "PD3", "PE6"],
    ledPin: 13,
  },
  atmega2560,
  {
    ...atmega2560,
    name: "atmega1280",
    printedName: "ATmega1280",
    header: "avr/iom1280.h",
    memory: { ...atmega2560.memory, flashEnd: 0x1ffff, signature: [0x1e, 0x97, 0x03] },
  },
  attiny85,
  {
    ...attiny85,
    name: "attiny45",
    printedName: "ATtiny45",
    header: "avr/iotn45.h",
    memory: {
      ...attiny85.memory,
      ramEnd: 0x15f,
      eepromEnd: 0xff,
      flashEnd: 0xfff,
      signature: [0x1e, 0x92, 0x06],
    },
  },
  {
    ...attiny85,
    name: "attiny25",
    printedName: "ATtiny25",
    header: "avr/iotn25.h",
    memory: {
      ...attiny85.memory,
      ramEnd: 0xdf,
      eepromEnd: 0x7f,
      flashEnd: 0x7ff,
      flashPage: 32,
      signature: [0x1e, 0x91, 0x08],
    },
    differences: { without: ["SPH"], rows: "SP cpu 0x5D 8" },
  },
  {
    name: "attiny2313",
    printedName: "ATtiny2313",
    header: "avr/iotn2313.h",
    memory: {
      ramStart: 0x60,
      ramEnd: 0xdf,
      eepromEnd: 0x7f,
      flashEnd: 0x7ff,
      flashPage: 32,
      signature: [0x1e, 0x91, 0x0a],
    },
    vectorEntryBytes: 2,
    registers: registers2313,
    vectors: vectors2313,
    pins: pins2313,
    analogOnly: {},
    sketchInterrupts: [],
    ledPin: undefined,
  },
  ...chipsLike8,
  ...chipsLike168,
  ...chipsLike16,
  ...chipsLike644p,
  ...chipsLike84,
  ...chipsLike4313,
];
