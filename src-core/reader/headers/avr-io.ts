import type { AvrChip } from "../../model/chips/chip.ts";
import { portConstants } from "../../model/chips.ts";
import { unnamedChipText } from "./avr-unnamed.ts";
import { avrOnly, define, type HeaderText } from "./header-target.ts";

/**
 * `avr/io.h`: registers by address, bits, vectors and memory of the chip, spelled as in avr-libc's headers and
 * taken from the model's chip tables.
 */
export const avrIo: HeaderText = avrOnly(
  ({ avr, isNamed }) => `#pragma once
#include <avr/sfr_defs.h>
${avr === undefined ? (isNamed ? "" : unnamedChipText()) : chipText(avr)}`,
);

function hex(value: number): string {
  return `0x${value.toString(16).toUpperCase().padStart(2, "0")}`;
}

function chipText(chip: AvrChip): string {
  const seen = new Set<string>();
  let text = "";
  const add = (name: string, value: string | number) => {
    if (seen.has(name)) return;
    seen.add(name);
    text += define(name, value);
  };
  for (const { name, address, width } of chip.registers) {
    add(name, `(*(volatile uint${width}_t *)${hex(address)})`);
  }
  for (const { bits } of chip.registers) for (const { name, bit } of bits) add(name, bit);
  for (const [name, bit] of portConstants(chip)) add(name, bit);
  for (const { number, names } of chip.vectors) {
    for (const name of names) {
      add(name, `__vector_${number}`);
      add(`${name}_num`, number);
    }
  }
  add(
    "_VECTORS_SIZE",
    (Math.max(0, ...chip.vectors.map(({ number }) => number)) + 1) * chip.vectorEntryBytes,
  );
  memory(chip, add);
  return text;
}

function memory({ memory: sizes }: AvrChip, add: (name: string, value: string | number) => void): void {
  add("RAMSTART", hex(sizes.ramStart));
  add("RAMEND", hex(sizes.ramEnd));
  add("E2END", hex(sizes.eepromEnd));
  add("FLASHEND", hex(sizes.flashEnd));
  add("SPM_PAGESIZE", sizes.flashPage);
  sizes.signature.forEach((byte, index) => {
    add(`SIGNATURE_${index}`, hex(byte));
  });
}

/** `avr/sfr_defs.h`: how a register is a place in memory. */
export const sfrDefs: HeaderText = avrOnly(`#pragma once
#include <stdint.h>
#define _BV(bit) (1 << (bit))
#define _VECTOR(number) __vector_ ## number
#define __SFR_OFFSET 0x20
#define _SFR_MEM8(address) (*(volatile uint8_t *)(address))
#define _SFR_MEM16(address) (*(volatile uint16_t *)(address))
#define _SFR_MEM32(address) (*(volatile uint32_t *)(address))
#define _SFR_IO8(address) _SFR_MEM8((address) + __SFR_OFFSET)
#define _SFR_IO16(address) _SFR_MEM16((address) + __SFR_OFFSET)
#define _SFR_MEM_ADDR(register) ((uint16_t)&(register))
#define _SFR_IO_ADDR(register) (_SFR_MEM_ADDR(register) - __SFR_OFFSET)
#define _SFR_ADDR(register) _SFR_MEM_ADDR(register)
#define _SFR_BYTE(register) _SFR_MEM8(_SFR_ADDR(register))
#define _SFR_WORD(register) _SFR_MEM16(_SFR_ADDR(register))
#define bit_is_set(register, bit) ((register) & _BV(bit))
#define bit_is_clear(register, bit) (!((register) & _BV(bit)))
#define loop_until_bit_is_set(register, bit) do { } while (bit_is_clear(register, bit))
#define loop_until_bit_is_clear(register, bit) do { } while (bit_is_set(register, bit))
`);
