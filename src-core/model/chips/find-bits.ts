import type { BitPlace, Register } from "./chip.ts";

/** The register bit of this name. */
export function bitPlace(registers: readonly Register[], name: string): BitPlace | undefined {
  for (const register of registers) {
    const found = register.bits.find((each) => each.name === name);
    if (found !== undefined) return { register: register.name, bit: found.bit };
  }
  return undefined;
}

export function registerNamed(registers: readonly Register[], name: string): Register | undefined {
  return registers.find((each) => each.name === name);
}
