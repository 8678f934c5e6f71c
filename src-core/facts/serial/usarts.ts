import type { Chip, Usart } from "../../model/chips/chip.ts";
import { avrChipNamed } from "../../model/chips.ts";

/** What a register is to its USART. */
export type UsartPart = "divisor" | "divisor-low" | "divisor-high" | "a" | "b" | "c" | "data";

export interface UsartRegister {
  readonly usart: Usart;
  readonly part: UsartPart;
}

/** By register name, the USARTs of the chip; those of every classic chip where the chip is not known. */
export function usartRegisters(chip: Chip | undefined): ReadonlyMap<string, UsartRegister> {
  const registers = new Map<string, UsartRegister>();
  for (const usart of usartsOf(chip)) {
    const add = (name: string | undefined, part: UsartPart) => {
      if (name !== undefined) registers.set(name, { usart, part });
    };
    add(usart.divisor?.name, "divisor");
    add(usart.divisorLow.name, "divisor-low");
    add(usart.divisorHigh.name, "divisor-high");
    add(usart.control[0].name, "a");
    add(usart.control[1].name, "b");
    add(usart.control[2].name, "c");
    // Where a chip's header has several names for it (RXB, TXB), the walk may meet any of them.
    const others = chip?.kind === "avr" ? chip.registers : [usart.data];
    for (const { name, address } of others) if (address === usart.data.address) add(name, "data");
  }
  return registers;
}

/** Chips whose USARTs between them have all the names that classic chips use. */
const NAME_GIVERS = ["attiny2313", "atmega2560"] as const;

function usartsOf(chip: Chip | undefined): readonly Usart[] {
  if (chip !== undefined) return chip.kind === "avr" ? chip.usarts : [];
  return NAME_GIVERS.flatMap((name) => avrChipNamed(name)?.usarts ?? []);
}
