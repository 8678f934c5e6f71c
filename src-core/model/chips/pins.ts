import type { ExternalInterrupt, Pin, PinChangeInterrupt, Port, Register, Vector } from "./chip.ts";
import { bitPlace, registerNamed } from "./find-bits.ts";
import type { PinRow } from "./read-tables.ts";

/** Pins with the registers of their interrupts, which the names in the register table tell. */
export function pinsOf(
  rows: readonly PinRow[],
  registers: readonly Register[],
  vectors: readonly Vector[],
): readonly Pin[] {
  return rows.map((row) => ({
    name: row.name,
    port: row.name.slice(1, -1),
    bit: Number(row.name.slice(-1)),
    boardNames: row.boardNames,
    externalInterrupt: externalInterrupt(row.externalInterrupt, registers),
    pinChange: pinChange(row.pinChange, registers, vectors),
    dipPin: row.dipPin,
    functions: row.functions,
  }));
}

function externalInterrupt(
  name: string | undefined,
  registers: readonly Register[],
): ExternalInterrupt | undefined {
  const enable = name === undefined ? undefined : bitPlace(registers, name);
  if (name === undefined || enable === undefined) return undefined;
  const number = name.slice("INT".length);
  const high = bitPlace(registers, `ISC${number}1`);
  const low = bitPlace(registers, `ISC${number}0`);
  return {
    name,
    vector: `${name}_vect`,
    enable,
    flag: bitPlace(registers, `INTF${number}`),
    sense: high === undefined || low === undefined ? undefined : [high, low],
  };
}

/** PCMSKn belongs to PCIEn and PCINTn_vect; chips with one group leave the number out, some of PCMSK0 alone. */
function pinChange(
  name: string | undefined,
  registers: readonly Register[],
  vectors: readonly Vector[],
): PinChangeInterrupt | undefined {
  const mask = name === undefined ? undefined : bitPlace(registers.filter(isPinMask), name);
  if (name === undefined || mask === undefined) return undefined;
  const group = mask.register.slice("PCMSK".length);
  const number = group === "" && bitPlace(registers, "PCIE") === undefined ? "0" : group;
  const enable = bitPlace(registers, `PCIE${number}`);
  const vector = vectors.find(({ names }) => names.some((each) => isGroupVector(each, group)));
  if (enable === undefined || vector === undefined) return undefined;
  return { name, vector: vector.names[0], mask, enable, flag: bitPlace(registers, `PCIF${number}`) };
}

function isPinMask(register: Register): boolean {
  return register.name.startsWith("PCMSK");
}

function isGroupVector(vector: string, group: string): boolean {
  return vector === `PCINT${group}_vect` || (group === "" && vector === "PCINT0_vect");
}

/** Port letters with their three registers, in the order of the letters. */
export function portsOf(pins: readonly Pin[], registers: readonly Register[]): readonly Port[] {
  const letters = [...new Set(pins.map(({ port }) => port))].sort();
  return letters.flatMap((letter) => {
    const pinRegister = registerNamed(registers, `PIN${letter}`);
    const directionRegister = registerNamed(registers, `DDR${letter}`);
    const outputRegister = registerNamed(registers, `PORT${letter}`);
    if (pinRegister === undefined || directionRegister === undefined || outputRegister === undefined)
      return [];
    const bits = pins.filter(({ port }) => port === letter).map(({ bit }) => bit);
    return [{ letter, bits: bits.sort((a, b) => a - b), pinRegister, directionRegister, outputRegister }];
  });
}
