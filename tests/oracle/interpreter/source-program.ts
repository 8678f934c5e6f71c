/** A program for the virtual serial port, in one main file, with headers that it includes in quotes. */
export interface SourceProgram {
  readonly language: "c" | "c++" | "sketch";
  readonly text: string;
  /** Name to text. */
  readonly headers: Readonly<Record<string, string>>;
}

export const mainFiles = { c: "main.c", "c++": "main.cpp", sketch: "main.ino" } as const;

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

/** Hz; `F_CPU` for both. */
export const clockHz = 16_000_000;
