import type { Register, RegisterBit, Vector } from "./chip.ts";

/** A row of a chip's pin table. */
export interface PinRow {
  readonly name: string;
  readonly boardNames: readonly string[];
  readonly externalInterrupt: string | undefined;
  readonly pinChange: string | undefined;
  readonly dipPin: number | undefined;
  readonly functions: readonly string[];
}

/** Registers at or above this data-space address have no IN/OUT address. */
const FIRST_EXTENDED_ADDRESS = 0x60;
const IO_OFFSET = 0x20;

/** Rows of words, one row a line; empty lines are left out. */
function rows(table: string): readonly (readonly string[])[] {
  return table
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => line.split(/\s+/));
}

/** Reads `NAME group address width bits...` (bits from the highest down). */
export function readRegisters(table: string): readonly Register[] {
  return rows(table).map(([name = "", group = "", address = "", width = "", ...bits]) => {
    const at = Number(address);
    return {
      name,
      group,
      address: at,
      width: width === "16" ? 16 : 8,
      ioAddress: at < FIRST_EXTENDED_ADDRESS ? at - IO_OFFSET : undefined,
      bits: bitsFromHighest(bits),
    };
  });
}

function bitsFromHighest(columns: readonly string[]): readonly RegisterBit[] {
  return columns
    .flatMap((names, index) =>
      names === "-" ? [] : names.split("/").map((name) => ({ name, bit: columns.length - 1 - index })),
    )
    .reverse();
}

/** Reads `number NAME alias...`. */
export function readVectors(table: string, entryBytes: number): readonly Vector[] {
  return rows(table).map(([number = "", name = "", ...aliases]) => ({
    number: Number(number),
    names: [name, ...aliases],
    byteAddress: Number(number) * entryBytes,
  }));
}

/** Reads `PD2 D2,A4 INT0 PCINT18 4 functions...`; `-` stands for none. */
export function readPins(table: string): readonly PinRow[] {
  return rows(table).map(
    ([name = "", boards = "-", external = "-", change = "-", dip = "-", ...functions]) => ({
      name,
      boardNames: boards === "-" ? [] : boards.split(","),
      externalInterrupt: external === "-" ? undefined : external,
      pinChange: change === "-" ? undefined : change,
      dipPin: dip === "-" ? undefined : Number(dip),
      functions,
    }),
  );
}
