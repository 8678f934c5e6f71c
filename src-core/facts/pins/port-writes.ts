import type { RegisterWrite } from "../walk/events.ts";
import { heldValue, settleBits } from "../walk/load-store.ts";
import type { Machine } from "../walk/machine.ts";
import { bitsOf, unknownBits } from "../walk/unknowns.ts";
import type { Bits } from "../walk/values.ts";
import type { ChipRegisters } from "./chip-registers.ts";
import type { PinState, Tristate } from "./pin-change.ts";

const portRegister = /^(PORT|DDR|PIN)([A-L])$/;

export function isLatchName(name: string): boolean {
  return /^(PORT|DDR)[A-L]$/.test(name);
}

/** Turns a write to a port's register into what it does to each pin. */
export function portWritten(write: RegisterWrite, machine: Machine, registers: ChipRegisters): void {
  const [, kind, letter] = portRegister.exec(write.register.name) ?? [];
  if (kind === undefined || letter === undefined) return;
  if (kind === "PIN") toggled(write, machine, registers, letter);
  else changed(write, machine, registers, kind === "PORT" ? "latch" : "output", letter);
}

function bitOf({ known, ones }: Bits, mask: number): Tristate {
  if ((known & mask) === 0) return undefined;
  return (ones & mask) === 0 ? 0 : 1;
}

function changed(
  write: RegisterWrite,
  machine: Machine,
  registers: ChipRegisters,
  part: keyof PinState,
  letter: string,
): void {
  const other = registers.named(`${part === "latch" ? "DDR" : "PORT"}${letter}`);
  const otherBits =
    other === undefined
      ? { known: 0, ones: 0 }
      : bitsOf(heldValue(machine, machine.memory.registerPlace(other, true)));
  for (let bit = 0; bit < 8; bit += 1) {
    const mask = 1 << bit;
    if ((write.kept & mask) !== 0) continue;
    const before = bitOf(write.before, mask);
    const after = bitOf(write.after, mask);
    const named = write.operator !== "=" && ((write.ones | write.zeros | write.flipped) & mask) !== 0;
    if (before === after && before !== undefined && !named) continue;
    const rest = bitOf(otherBits, mask);
    machine.emit({
      kind: "pin",
      at: write.at,
      change: {
        pin: `P${letter}${bit}`,
        before: part === "latch" ? { output: rest, latch: before } : { output: before, latch: rest },
        after: part === "latch" ? { output: rest, latch: after } : { output: after, latch: rest },
        value: write.value,
      },
    });
  }
}

/** A 1 written to a bit of PINx turns that bit of PORTx over. */
function toggled(write: RegisterWrite, machine: Machine, registers: ChipRegisters, letter: string): void {
  const output = registers.named(`PORT${letter}`);
  const direction = registers.named(`DDR${letter}`);
  if (output === undefined || direction === undefined) return;
  const place = machine.memory.registerPlace(output, true);
  const before = bitsOf(heldValue(machine, place));
  const turned = bitsOf(write.value);
  // |= reads the pins first, so every pin that is high is turned over too.
  const certain = write.operator === "=" ? turned.known : 0;
  const known = before.known & certain;
  const after = unknownBits(known, (before.ones ^ turned.ones) & known, undefined, [], undefined);
  machine.memory.write(place, after);
  if (machine.moment === "reset") settleBits(place, after);
  const outputs = bitsOf(heldValue(machine, machine.memory.registerPlace(direction, true)));
  for (let bit = 0; bit < 8; bit += 1) {
    const mask = 1 << bit;
    if ((certain & ~turned.ones & mask) !== 0) continue;
    machine.emit({
      kind: "pin",
      at: write.at,
      change: {
        pin: `P${letter}${bit}`,
        before: { output: bitOf(outputs, mask), latch: bitOf(before, mask) },
        after: { output: bitOf(outputs, mask), latch: bitOf(after, mask) },
        value: write.value,
      },
    });
  }
}
