import { avrTables } from "../../model/chips/avr-chips.ts";
import type { AvrChip, Register } from "../../model/chips/chip.ts";
import { avrChipNamed, portConstants } from "../../model/chips.ts";
import { define } from "./header-target.ts";

/** Peripherals whose registers mean the same by name on every classic AVR chip, and those whose bits do as well. */
const namedGroups: ReadonlySet<string> = new Set(["gpio", "usart", "extint", "pcint"]);
const numberedGroups: ReadonlySet<string> = new Set(["gpio", "usart"]);

/**
 * What `avr/io.h` says of a chip that is not known: registers of ports, USARTs and interrupts by name alone, and
 * numbers for those bits of ports and USARTs on which all chips of the model agree. The rest differs from chip to chip.
 */
export function unnamedChipText(): string {
  text ??= madeText();
  return text;
}

let text: string | undefined;

function madeText(): string {
  const chips = avrTables.flatMap(({ name }) => avrChipNamed(name) ?? []);
  const bytes = new Set<string>();
  const words = new Set<string>();
  const bits = new Map<string, number | undefined>();
  for (const chip of chips) {
    for (const { name, width } of registersIn(chip, namedGroups)) (width === 8 ? bytes : words).add(name);
    for (const [name, bit] of bitsOf(chip)) {
      bits.set(name, bits.has(name) && bits.get(name) !== bit ? undefined : bit);
    }
  }
  // ATtiny4313 calls a bit what others call a register: UDR0.
  const agreed = [...bits].map(([name, bit]) =>
    bit === undefined || bytes.has(name) || words.has(name) ? "" : define(name, bit),
  );
  return `extern volatile uint8_t ${[...bytes].join(", ")};
extern volatile uint16_t ${[...words].join(", ")};
${agreed.join("")}`;
}

function registersIn({ registers }: AvrChip, groups: ReadonlySet<string>): readonly Register[] {
  return registers.filter(({ group }) => groups.has(group));
}

function bitsOf(chip: AvrChip): readonly (readonly [string, number])[] {
  const inRegisters = registersIn(chip, numberedGroups).flatMap(({ bits }) =>
    bits.map(({ name, bit }) => [name, bit] as const),
  );
  return [...inRegisters, ...portConstants(chip)];
}
