import type { AvrChip, Memory, Register } from "./chip.ts";
import { pinsOf, portsOf } from "./pins.ts";
import { readPins, readRegisters, readVectors } from "./read-tables.ts";
import { timersOf } from "./timers.ts";
import { usartsOf } from "./usarts.ts";

/** What is written down about an AVR chip; everything else follows from the names in its tables. */
export interface AvrTables {
  readonly name: string;
  readonly printedName: string;
  /** File of avr-libc that the tables were taken from. */
  readonly header: string;
  readonly memory: Memory;
  readonly vectorEntryBytes: 2 | 4;
  readonly registers: string;
  readonly vectors: string;
  readonly pins: string;
  /** Registers that a sibling lacks, and rows that differ or are more. */
  readonly differences?: { readonly without: readonly string[]; readonly rows: string };
  readonly analogOnly: Readonly<Record<string, string>>;
  readonly sketchInterrupts: readonly string[];
  readonly ledPin: number | undefined;
}

export function avrChip(tables: AvrTables): AvrChip {
  const registers = registersOf(tables);
  const vectors = readVectors(tables.vectors, tables.vectorEntryBytes);
  const rows = readPins(tables.pins);
  const pins = pinsOf(rows, registers, vectors);
  const usarts = usartsOf(registers, pins, vectors);
  return {
    kind: "avr",
    name: tables.name,
    printedName: tables.printedName,
    family: "avr",
    dataModel: "avr",
    baudGenerators: usarts.length === 0 ? ["avr-timer0-compare"] : ["avr-classic"],
    uarts: usarts.map(({ number }) => number),
    sources: [
      { document: "avrLibcHeaders", place: tables.header },
      { document: "sketchCorePins", place: "" },
    ],
    memory: tables.memory,
    registers,
    vectors,
    vectorEntryBytes: tables.vectorEntryBytes,
    ports: portsOf(pins, registers),
    pins,
    analogOnly: tables.analogOnly,
    sketchInterrupts: tables.sketchInterrupts,
    ledPin: tables.ledPin,
    usarts,
    timers: timersOf(registers),
  };
}

function registersOf({ registers, differences }: AvrTables): readonly Register[] {
  const all = readRegisters(registers);
  if (differences === undefined) return all;
  const changed = readRegisters(differences.rows);
  const replaced = new Map(changed.map((each) => [each.name, each]));
  const names = new Set(all.map(({ name }) => name));
  return all
    .filter(({ name }) => !differences.without.includes(name))
    .map((each) => replaced.get(each.name) ?? each)
    .concat(changed.filter(({ name }) => !names.has(name)));
}
