import type { AvrChip, BitPlace } from "../../model/chips/chip.ts";
import { bitPlace, registerNamed } from "../../model/chips/find-bits.ts";
import type { Bit } from "../chip/interrupts.ts";

/** The bit of this name, in data space; undefined where the chip lacks it. */
export function bitNamed(model: AvrChip, name: string): Bit | undefined {
  return bitAt(model, bitPlace(model.registers, name));
}

export function bitAt(model: AvrChip, place: BitPlace | undefined): Bit | undefined {
  const register = place && registerNamed(model.registers, place.register);
  return place && register && { address: register.address, mask: 1 << place.bit };
}

/** The usual name of a vector that may be spelt otherwise. */
export function usualVectorName(model: AvrChip, name: string): string {
  return model.vectors.find(({ names }) => names.includes(name))?.names[0] ?? name;
}
