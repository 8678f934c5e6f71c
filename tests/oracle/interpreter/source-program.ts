import type { OneFile } from "../../src-core/interpreter/read-one-file.ts";

export { clockHz, mainFiles } from "../../src-core/interpreter/read-one-file.ts";

/** A program that writes to the virtual serial port. */
export type SourceProgram = OneFile;

/** What the compiler and the reader are told that the program runs on. */
export interface Target {
  readonly chip: string;
  readonly ramBytes: number;
}

/** The sketch core knows the pins of few chips; the other programs take one with much memory. */
export function targetOf({ language }: SourceProgram): Target {
  return language === "sketch"
    ? { chip: "atmega328p", ramBytes: 2 * 1024 }
    : { chip: "atmega1284p", ramBytes: 16 * 1024 };
}

/** USART 0 of both chips: its data register, its status register and the bit "data register empty" (datasheets). */
export const serialPort = { data: 0xc6, status: 0xc0, ready: 0x20 } as const;

/** End of transmission: what a program sends last. */
export const endOfTransmission = 4;
