/** A program for the virtual serial port, in one main file, with headers that it includes in quotes. */
export interface SourceProgram {
  readonly language: "c" | "c++";
  readonly text: string;
  /** Name to text. */
  readonly headers: Readonly<Record<string, string>>;
}

/** What the compiler and the reader are told that the program runs on: 16 KiB of RAM, flash of 128 KiB. */
export const chipName = "atmega1284p";

/** USART data register and status register with its bit "data register empty": datasheet, "Register Summary". */
export const serialPort = { data: 0xc6, status: 0xc0, ready: 0x20 } as const;

/** End of transmission: what a program sends last. */
export const endOfTransmission = 4;

/** Hz; `F_CPU` for both. */
export const clockHz = 16_000_000;
