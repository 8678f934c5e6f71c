import { describe, expect, test } from "vitest";
import type { AvrChip } from "../../../src-core/model/chips/chip.ts";
import { avrChipNamed, chipNames, portConstants } from "../../../src-core/model/chips.ts";
import { avrC, sectionsOf } from "../constants/avr-compiler.ts";
import { type DeviceHeader, deviceHeader, headerRegisters, numberOf } from "./device-header.ts";

const chips: readonly AvrChip[] = chipNames.flatMap((name) => avrChipNamed(name) ?? []);

/** Numbers that are no bits of registers: signature, fuses, sleep modes, sizes, vectors. */
const NOT_BITS =
  /^(_|SIGNATURE_|FUSE|LFUSE|HFUSE|EFUSE|SLEEP_MODE|SPM_PAGESIZE|E2PAGESIZE|XRAM|RAM|E2END|FLASH|.*_vect_num$)/;

/** Names and numbers of vectors, `INT0_vect` to 1. */
function headerVectors(header: DeviceHeader): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const name of header.macros.keys()) {
    const number = name.endsWith("_vect_num") ? numberOf(header, name) : undefined;
    if (number !== undefined) found.set(name.slice(0, -"_num".length), number);
  }
  return found;
}

/** Every name of a bit and its number, as the table has them. */
function tableBits(chip: AvrChip): ReadonlyMap<string, number> {
  return new Map(chip.registers.flatMap(({ bits }) => bits.map(({ name, bit }) => [name, bit] as const)));
}

test("there are AVR chips to compare", () => {
  expect(chips.length).toBeGreaterThanOrEqual(6);
});

describe.each(chips.map((chip) => [chip.name, chip] as const))(
  "%s against avr-libc's avr/io.h",
  (name, chip) => {
    const header = deviceHeader(name);

    test("every register, its address and width, and no other", () => {
      const table = chip.registers.map(({ name, address, width }) => [name, { address, width }] as const);
      expect(new Map(table)).toEqual(headerRegisters(header));
      expect(new Set(table.map(([register]) => register)).size).toBe(table.length);
    });

    test("every bit has the header's number", () => {
      for (const [bit, number] of tableBits(chip))
        expect([bit, numberOf(header, bit)]).toEqual([bit, number]);
    });

    test("every small number of the device header is a bit of the table or a pin", () => {
      const known = new Set([...tableBits(chip).keys(), ...portConstants(chip).keys()]);
      const unknown = header.ownNames.filter((each) => {
        const value = numberOf(header, each);
        return value !== undefined && value < 16 && !NOT_BITS.test(each) && !known.has(each);
      });
      expect(unknown).toEqual([]);
    });

    test("spellings of pin numbers", () => {
      for (const [spelling, bit] of portConstants(chip)) {
        expect([spelling, numberOf(header, spelling)]).toEqual([spelling, bit]);
      }
    });

    test("the pins are the bits of the ports", () => {
      const pins = new Set(chip.pins.map((pin) => `P${pin.port}${pin.bit}`));
      const inHeader = [...header.macros.keys()].filter((each) => /^P[A-L][0-7]$/.test(each));
      expect(new Set(inHeader)).toEqual(pins);
    });

    test("every vector and its number, and no other", () => {
      const table = chip.vectors.flatMap(({ number, names }) => names.map((each) => [each, number] as const));
      expect(new Map(table)).toEqual(headerVectors(header));
    });

    test("vector addresses fill the table", () => {
      const size = /^\(?(\d+)(?:\s*\*\s*(\w+))?\)?$/.exec(header.macros.get("_VECTORS_SIZE") ?? "");
      const each = size?.[2] ?? "1";
      const bytes = Number(size?.[1]) * (numberOf(header, each) ?? Number(each));
      const last = chip.vectors.at(-1);
      expect((last?.byteAddress ?? 0) + chip.vectorEntryBytes).toBe(bytes);
      expect(last?.byteAddress).toBe((last?.number ?? 0) * chip.vectorEntryBytes);
    });

    test("memory, as avr-gcc computes it", () => {
      const names = ["RAMSTART", "RAMEND", "E2END", "FLASHEND", "SPM_PAGESIZE"];
      const signatures = ["SIGNATURE_0", "SIGNATURE_1", "SIGNATURE_2"];
      const text = `#include <avr/io.h>
const unsigned long values[] __attribute__((section(".values"), used)) = { ${[...names, ...signatures].join(", ")} };`;
      const [values] = sectionsOf({ ...avrC, flags: [`-mmcu=${name}`] }, text, [".values"]);
      const { ramStart, ramEnd, eepromEnd, flashEnd, flashPage, signature } = chip.memory;
      expect([ramStart, ramEnd, eepromEnd, flashEnd, flashPage, ...signature]).toEqual(
        [...names, ...signatures].map((_, index) => values?.readUInt32LE(index * 4)),
      );
    });

    test("the interrupts of the pins are vectors and bits of the header", () => {
      for (const { externalInterrupt, pinChange } of chip.pins) {
        for (const interrupt of [externalInterrupt, pinChange]) {
          if (interrupt === undefined) continue;
          expect(headerVectors(header).has(interrupt.vector)).toBe(true);
          expect(numberOf(header, interrupt.name)).toBeDefined();
        }
      }
    });
  },
);
