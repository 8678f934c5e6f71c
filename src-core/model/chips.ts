import { type AvrTables, avrChip } from "./chips/avr-chip.ts";
import { avrTables } from "./chips/avr-chips.ts";
import type { AvrChip, Chip, Pin, Register, RegisterBit, Vector } from "./chips/chip.ts";
import { namedChips } from "./chips/named-chips.ts";

const tablesByName: ReadonlyMap<string, AvrTables> = new Map(avrTables.map((each) => [each.name, each]));
const namedByName: ReadonlyMap<string, Chip> = new Map(namedChips.map((each) => [each.name, each]));
const built = new Map<string, AvrChip>();

/** Names as notes write them, AVR chips first. */
export const chipNames: readonly string[] = [...tablesByName.keys(), ...namedByName.keys()];

/** The chip of this name; capitals do not matter. Built on first use, the same object ever after. */
export function chip(name: string): Chip | undefined {
  const key = name.toLowerCase();
  const tables = tablesByName.get(key);
  if (tables === undefined) return namedByName.get(key);
  const known = built.get(key);
  if (known !== undefined) return known;
  const made = avrChip(tables);
  built.set(key, made);
  return made;
}

/** The name printed on a chip, without building its tables. */
export function printedChipName(name: string): string | undefined {
  const key = name.toLowerCase();
  return (tablesByName.get(key) ?? namedByName.get(key))?.printedName;
}

/** The AVR chip of this name, with registers and pins. */
export function avrChipNamed(name: string): AvrChip | undefined {
  const found = chip(name);
  return found?.kind === "avr" ? found : undefined;
}

/** `"2"`, `"D2"`, `"A3"` by the board's numbering, `"PD2"` by port. Undefined for a pin that the chip lacks. */
export function boardPin(of: Chip, name: string): Pin | undefined {
  if (of.kind !== "avr") return undefined;
  const wanted = name.toUpperCase();
  const board = /^\d+$/.test(wanted) ? `D${Number(wanted)}` : wanted;
  return of.pins.find((pin) => pin.name === wanted || pin.boardNames.includes(board));
}

/** The pin of a port letter and bit. */
export function pinByPort(of: Chip, port: string, bit: number): Pin | undefined {
  return of.kind === "avr" ? of.pins.find((pin) => pin.port === port && pin.bit === bit) : undefined;
}

export function registerNamed(of: Chip, name: string): Register | undefined {
  return of.kind === "avr" ? of.registers.find((each) => each.name === name) : undefined;
}

/**
 * The register at a data-space address; where a 16-bit register and its low byte share it, the one of `width`,
 * or the 8-bit one.
 */
export function registerAt(of: Chip, address: number, width: 8 | 16 = 8): Register | undefined {
  if (of.kind !== "avr") return undefined;
  const there = of.registers.filter((each) => each.address === address);
  return there.find((each) => each.width === width) ?? there[0];
}

/** The register bit of this name, and its register; the first of several registers that share the name. */
export function registerBitNamed(
  of: Chip,
  name: string,
): (RegisterBit & { readonly register: Register }) | undefined {
  if (of.kind !== "avr") return undefined;
  for (const register of of.registers) {
    const found = register.bits.find((each) => each.name === name);
    if (found !== undefined) return { ...found, register };
  }
  return undefined;
}

/** The vector of any of its names: `INT0_vect`. */
export function vectorNamed(of: Chip, name: string): Vector | undefined {
  return of.kind === "avr" ? of.vectors.find(({ names }) => names.includes(name)) : undefined;
}

/** The pin that the sketch core's `attachInterrupt(number, ...)` listens to. */
export function sketchInterruptPin(of: Chip, number: number): Pin | undefined {
  if (of.kind !== "avr") return undefined;
  const name = of.sketchInterrupts[number];
  return name === undefined ? undefined : of.pins.find((pin) => pin.name === name);
}

/** Spellings of pin numbers that sources use: `PB0`, `PORTB0`, `DDB0`, `PINB0`, and the number of each. */
export function portConstants(of: Chip): ReadonlyMap<string, number> {
  const constants = new Map<string, number>();
  if (of.kind !== "avr") return constants;
  for (const { letter, bits, directionRegister } of of.ports) {
    for (const bit of bits) {
      constants.set(`P${letter}${bit}`, bit);
      constants.set(`PORT${letter}${bit}`, bit);
      constants.set(`PIN${letter}${bit}`, bit);
      const direction = directionRegister.bits.find((each) => each.bit === bit)?.name;
      constants.set(direction ?? `DD${letter}${bit}`, bit);
    }
  }
  return constants;
}
