import type { Chip } from "../../model/chips/chip.ts";
import type { Register } from "../walk/values.ts";

/** Registers of a chip as the walk asks for them; the same object for the same register. */
export interface ChipRegisters {
  at(address: number, bits: number): Register | undefined;
  named(name: string): Register | undefined;
}

const tables = new WeakMap<Chip, ChipRegisters>();

export function chipRegisters(chip: Chip | undefined): ChipRegisters {
  if (chip === undefined || chip.kind !== "avr") return registersByShape();
  let table = tables.get(chip);
  if (table === undefined) {
    const byName = new Map<string, Register>();
    const byAddress = new Map<number, Register[]>();
    for (const { name, address, width } of chip.registers) {
      const register: Register = { name, address, bits: width };
      if (!byName.has(name)) byName.set(name, register);
      const there = byAddress.get(address);
      if (there === undefined) byAddress.set(address, [register]);
      else there.push(register);
    }
    table = {
      at(address, bits) {
        const there = byAddress.get(address);
        return there?.find((register) => register.bits === bits) ?? there?.[0];
      },
      named: (name) => byName.get(name),
    };
    tables.set(chip, table);
  }
  return table;
}

/** Names that only registers have in such sources, for a chip that is not known. */
const registerShape =
  /^((PORT|DDR|PIN)[A-L]|(UBRR|UCSR|UDR|EICR|PCMSK|TCCR|OCR|TCNT|TIMSK|TIFR)\w{0,3}|EIMSK|EIFR|PCICR|PCIFR|GIMSK|GICR|GIFR|MCUCR|SREG)$/;

function registersByShape(): ChipRegisters {
  const byName = new Map<string, Register>();
  return {
    at: () => undefined,
    named(name) {
      let register = byName.get(name);
      if (register === undefined && registerShape.test(name)) {
        register = { name, address: undefined, bits: /^(UBRR\d?|OCR1[A-C]|TCNT1)$/.test(name) ? 16 : 8 };
        byName.set(name, register);
      }
      return register;
    },
  };
}
