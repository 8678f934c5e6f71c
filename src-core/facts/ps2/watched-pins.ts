import type { Chip } from "../../model/chips/chip.ts";
import type { PinName } from "../pins/pin-change.ts";
import { pinOfNumber } from "../pins/pin-names.ts";
import { integerOf, type Trace, type Value } from "../walk/values.ts";

/** Pins whose level a register read looks at: `PIND & _BV(2)`. */
export function pinsOfRegister(name: string, mask: number): PinName[] {
  const letter = letterOfInput(name);
  if (letter === undefined) return [];
  const pins: PinName[] = [];
  for (let bit = 0; bit < 8; bit += 1) if ((mask & (1 << bit)) !== 0) pins.push(`P${letter}${bit}`);
  return pins;
}

/** The port of `PINA` to `PINL`. */
function letterOfInput(name: string): string | undefined {
  const letter = name.charAt(3);
  return name.length === 4 && name.startsWith("PIN") && letter >= "A" && letter <= "L" ? letter : undefined;
}

export function pinOfValue(chip: Chip | undefined, value: Value | undefined): PinName | undefined {
  const number = integerOf(value);
  return number === undefined ? undefined : pinOfNumber(chip, number);
}

/** The one pin whose level a value depends on; undefined for none, or where a whole port is looked at. */
export function pinOfTrace(chip: Chip | undefined, trace: Trace): PinName | undefined {
  if (trace.kind === "pin") return pinOfValue(chip, trace.pin);
  if (trace.kind !== "register") return undefined;
  const letter = letterOfInput(trace.register.name);
  const mask = trace.mask & 0xff;
  const isOneBit = mask !== 0 && (mask & (mask - 1)) === 0;
  return letter !== undefined && isOneBit ? `P${letter}${31 - Math.clz32(mask)}` : undefined;
}
