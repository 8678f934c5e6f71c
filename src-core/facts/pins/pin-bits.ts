import { heldValue, settleBits } from "../walk/load-store.ts";
import type { Machine } from "../walk/machine.ts";
import type { Place } from "../walk/places.ts";
import { bitsOf, unknownBits } from "../walk/unknowns.ts";
import type { Register, Value } from "../walk/values.ts";
import type { ChipRegisters } from "./chip-registers.ts";
import type { PinName, PinState, Tristate } from "./pin-change.ts";

/** Where a pin's two bits are kept: in the registers of its port, or apart where the port is not known. */
interface BitPlaces {
  readonly direction: Place;
  readonly directionBit: number;
  readonly latch: Place;
  readonly latchBit: number;
}

export function bitPlaces(machine: Machine, registers: ChipRegisters, pin: PinName): BitPlaces {
  const [, letter = "", bit = "0"] = /^P([A-L])([0-7])$/.exec(pin) ?? [];
  const [output, direction] = [registers.named(`PORT${letter}`), registers.named(`DDR${letter}`)];
  if (letter !== "" && output !== undefined && direction !== undefined) {
    return {
      direction: machine.memory.registerPlace(direction, true),
      directionBit: Number(bit),
      latch: machine.memory.registerPlace(output, true),
      latchBit: Number(bit),
    };
  }
  const own: Register = { name: pin, address: undefined, bits: 8 };
  const place = machine.memory.registerPlace(own, true);
  return { direction: place, directionBit: 0, latch: place, latchBit: 1 };
}

export function pinState(machine: Machine, places: BitPlaces): PinState {
  return {
    output: bitOf(heldValue(machine, places.direction), places.directionBit),
    latch: bitOf(heldValue(machine, places.latch), places.latchBit),
  };
}

function bitOf(value: Value, bit: number): Tristate {
  const { known, ones } = bitsOf(value);
  const mask = 1 << bit;
  if ((known & mask) === 0) return undefined;
  return (ones & mask) === 0 ? 0 : 1;
}

/** Sets one bit of a register without the event of a register write. */
export function setBit(machine: Machine, place: Place, bit: number, to: Tristate): void {
  const { known, ones } = bitsOf(heldValue(machine, place));
  const mask = 1 << bit;
  const value = unknownBits(
    to === undefined ? known & ~mask : known | mask,
    to === 1 ? ones | mask : ones & ~mask,
    undefined,
    [],
    undefined,
  );
  machine.memory.write(place, value);
  if (machine.moment === "reset") settleBits(place, value);
}
