import type { Source } from "../sources.ts";

/** Sizes of the C types on the chip; `unknown` where no compiler is modelled. */
export type DataModelName = "avr" | "ilp32" | "unknown";

/** Chips of one family share their baud generators and their registers' ways. */
export type ChipFamily =
  | "avr"
  | "avr-dx"
  | "samd21"
  | "stm32f0"
  | "stm32f1"
  | "stm32f4"
  | "rp2040"
  | "pic"
  | "mcs51"
  | "esp8266"
  | "esp32"
  | "ch32v003";

interface ChipBase {
  /** Lower-case, as notes and compilers write it: `atmega328p`. */
  readonly name: string;
  /** As printed on the chip: `ATmega328P`. */
  readonly printedName: string;
  readonly family: ChipFamily;
  readonly dataModel: DataModelName;
  /** Ids for `baudGeneratorNamed`, in the order in which they should be tried; a timer where there is no UART. */
  readonly baudGenerators: readonly string[];
  /** Numbers of the UARTs that `uart=` may name; undefined where the model does not know them. */
  readonly uarts: readonly number[] | undefined;
  readonly sources: readonly Source[];
}

/** A chip whose registers, vectors and pins the model knows. */
export interface AvrChip extends ChipBase {
  readonly kind: "avr";
  readonly memory: Memory;
  readonly registers: readonly Register[];
  readonly vectors: readonly Vector[];
  readonly vectorEntryBytes: 2 | 4;
  readonly ports: readonly Port[];
  readonly pins: readonly Pin[];
  /** Board names that are analogue inputs only, such as A6, and their channel. */
  readonly analogOnly: Readonly<Record<string, string>>;
  /** Index: the interrupt number of the sketch core's `attachInterrupt`; value: the pin. */
  readonly sketchInterrupts: readonly string[];
  /** Board number of the built-in LED. */
  readonly ledPin: number | undefined;
  readonly usarts: readonly Usart[];
  readonly timers: readonly Timer[];
}

/** A chip of which the model knows the family, its baud generators and its type sizes. */
export interface NamedChip extends ChipBase {
  readonly kind: "named";
}

export type Chip = AvrChip | NamedChip;

/** First and last addresses, in bytes. */
export interface Memory {
  readonly ramStart: number;
  readonly ramEnd: number;
  readonly eepromEnd: number;
  readonly flashEnd: number;
  /** Bytes of one page of flash. */
  readonly flashPage: number;
  /** Three signature bytes. */
  readonly signature: readonly [number, number, number];
}

export interface RegisterBit {
  readonly name: string;
  /** 0 is the lowest. */
  readonly bit: number;
}

export interface Register {
  readonly name: string;
  /** Peripheral: `gpio`, `usart`, `timer0`, `pcint`, ... */
  readonly group: string;
  /** Data-space address (LDS/STS); a 16-bit register sits at the address of its low byte. */
  readonly address: number;
  readonly width: 8 | 16;
  /** IN/OUT address, where the register has one. */
  readonly ioAddress: number | undefined;
  /** Lowest first; several names may share a bit. */
  readonly bits: readonly RegisterBit[];
}

export interface Vector {
  readonly number: number;
  /** The first is the usual spelling. */
  readonly names: readonly [string, ...string[]];
  /** Byte address in flash with the table at 0. */
  readonly byteAddress: number;
}

/** A port letter and the bits that the package has. */
export interface Port {
  readonly letter: string;
  readonly bits: readonly number[];
  readonly pinRegister: Register;
  readonly directionRegister: Register;
  readonly outputRegister: Register;
}

/** One bit of one register. */
export interface BitPlace {
  readonly register: string;
  readonly bit: number;
}

export interface ExternalInterrupt {
  /** `INT0`. */
  readonly name: string;
  readonly vector: string;
  readonly enable: BitPlace;
  readonly flag: BitPlace | undefined;
  /** ISCn1 and ISCn0: the number of one of `interruptSenses`. */
  readonly sense: readonly [high: BitPlace, low: BitPlace] | undefined;
}

export interface PinChangeInterrupt {
  /** `PCINT18`. */
  readonly name: string;
  readonly vector: string;
  readonly mask: BitPlace;
  readonly enable: BitPlace;
  readonly flag: BitPlace | undefined;
}

export interface Pin {
  /** `PD2`. */
  readonly name: string;
  /** `D`. */
  readonly port: string;
  readonly bit: number;
  /** `D2`, `D18`, `A4`; empty where no board numbering names the pin. */
  readonly boardNames: readonly string[];
  readonly externalInterrupt: ExternalInterrupt | undefined;
  readonly pinChange: PinChangeInterrupt | undefined;
  /** Number on the DIP package. */
  readonly dipPin: number | undefined;
  /** Other functions: `RXD0`, `OC2B`, `ADC4`; `_n` marks an inverted output. */
  readonly functions: readonly string[];
}

/** Registers and bits that make one USART. */
export interface Usart {
  readonly number: number;
  readonly data: Register;
  /** UCSRnA, UCSRnB, UCSRnC. */
  readonly control: readonly [a: Register, b: Register, c: Register];
  /** The whole divisor where the chip has a 16-bit name for it. */
  readonly divisor: Register | undefined;
  readonly divisorLow: Register;
  readonly divisorHigh: Register;
  readonly bits: UsartBits;
  /** Pin names. */
  readonly txPin: string;
  readonly rxPin: string;
  readonly vectors: { readonly receive: string; readonly empty: string; readonly sent: string };
}

/** Bit numbers: the first three in UCSRnA and UCSRnB as named, the rest in UCSRnC. */
export interface UsartBits {
  readonly doubleSpeed: BitPlace;
  readonly transmitEnable: BitPlace;
  readonly receiveEnable: BitPlace;
  /** UCSZn2, UCSZn1, UCSZn0. */
  readonly size: readonly [BitPlace, BitPlace, BitPlace];
  readonly stop: BitPlace;
  /** UPMn1, UPMn0. */
  readonly parity: readonly [BitPlace, BitPlace];
  /** UMSELn1 (where there is one) and UMSELn0. */
  readonly mode: readonly BitPlace[];
  /** URSEL: 1 in what is written to UCSRC, 0 in what is written to UBRRH, where both are at one address. */
  readonly select: (BitPlace & { readonly name: string }) | undefined;
}

export interface Timer {
  readonly number: number;
  readonly width: 8 | 10 | 16;
  readonly counter: Register;
  /** Control registers in the order A, B, C, ... */
  readonly control: readonly Register[];
  /** Compare registers in the order A, B, C, ... */
  readonly compare: readonly Register[];
  /** Divider of the clock by the value of the clock-select bits; undefined for stopped or an external pin. */
  readonly prescalers: readonly (number | undefined)[];
}
