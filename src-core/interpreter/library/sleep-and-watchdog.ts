import { registerBitNamed } from "../../model/chips.ts";
import type { Surroundings, TargetMemory } from "../outcome.ts";
import { numberAt, type Subject } from "./values.ts";

/** Bits of one register by their names; those that the chip lacks are left out. */
interface Bits {
  readonly address: number;
  readonly mask: number;
}

function bitsOf({ chip, refuse }: Surroundings, names: readonly string[]): Bits {
  const found = names.flatMap((name) => (chip && registerBitNamed(chip, name)) ?? []);
  const [first] = found;
  if (first === undefined) return refuse(`a chip without the bit ${names[0]}`);
  return { address: first.register.address, mask: found.reduce((mask, { bit }) => mask | (1 << bit), 0) };
}

function change(memory: TargetMemory, { address, mask }: Bits, value: number): void {
  memory.writeByte(address, (memory.readByte(address) & ~mask) | value);
}

function setSleepEnable(memory: TargetMemory, surroundings: Surroundings, isEnabled: boolean): void {
  const enable = bitsOf(surroundings, ["SE"]);
  change(memory, enable, isEnabled ? enable.mask : 0);
}

/** The timed sequence: WDCE and WDE, then the new value within four cycles. */
function changeWatchdog(
  memory: TargetMemory,
  surroundings: Surroundings,
  chosen: (prescaler: readonly Bits[], enable: Bits) => number,
): void {
  const enable = bitsOf(surroundings, ["WDE"]);
  const guard = bitsOf(surroundings, ["WDCE"]);
  const prescaler = ["WDP0", "WDP1", "WDP2", "WDP3"].map((name) => bitsOf(surroundings, [name]));
  memory.writeByte(enable.address, memory.readByte(enable.address) | guard.mask | enable.mask);
  memory.writeByte(enable.address, chosen(prescaler, enable));
}

/** What avr-libc's avr/sleep.h and avr/wdt.h do to the chip's registers. */
export const sleepAndWatchdog: Subject = {
  set_sleep_mode: (parameters, memory, surroundings) => {
    const mode = bitsOf(surroundings, ["SM0", "SM1", "SM2"]);
    change(memory, mode, numberAt(parameters, 0) & mode.mask);
    return undefined;
  },
  sleep_enable: (_parameters, memory, surroundings) => {
    setSleepEnable(memory, surroundings, true);
    return undefined;
  },
  sleep_disable: (_parameters, memory, surroundings) => {
    setSleepEnable(memory, surroundings, false);
    return undefined;
  },
  sleep_cpu: (_parameters, _memory, { instruct }) => {
    instruct("sleep");
    return undefined;
  },
  sleep_mode: (_parameters, memory, surroundings) => {
    setSleepEnable(memory, surroundings, true);
    surroundings.instruct("sleep");
    setSleepEnable(memory, surroundings, false);
    return undefined;
  },
  wdt_reset: (_parameters, _memory, { instruct }) => {
    instruct("wdr");
    return undefined;
  },
  wdt_enable: (parameters, memory, surroundings) => {
    const time = numberAt(parameters, 0);
    surroundings.instruct("wdr");
    changeWatchdog(memory, surroundings, (prescaler, enable) =>
      prescaler.reduce((value, { mask }, bit) => value | ((time >> bit) & 1 ? mask : 0), enable.mask),
    );
    return undefined;
  },
  wdt_disable: (_parameters, memory, surroundings) => {
    changeWatchdog(memory, surroundings, () => 0);
    return undefined;
  },
};
