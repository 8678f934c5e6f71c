import type { ChipCore } from "./chip-core.ts";

/** Groups of the register table that some part of the bench's chip acts on, or that only hold what is written. */
const simulatedGroups: ReadonlySet<string> = new Set([
  "gpio",
  "pcint",
  "extint",
  "usart",
  "usi",
  "watchdog",
  "clock",
  "sleep",
  "cpu",
  "gpior",
  "timer",
]);

/** Has every write to a register that nothing acts on told once, so that no run looks as if it had. */
export function tellUnsimulatedRegisters(core: ChipCore, timers: ReadonlyMap<number, unknown>): void {
  const { cpu } = core;
  for (const { name, group, address, width } of core.model.registers) {
    const timer = /^timer(\d)$/.exec(group)?.[1];
    if (timer !== undefined ? timers.has(Number(timer)) : simulatedGroups.has(group)) continue;
    for (let at = address; at < address + width / 8; at += 1) {
      if (cpu.writeHooks[at] !== undefined) continue;
      cpu.writeHooks[at] = (value) => {
        if (value !== 0) core.tellNotSimulated(`${name} (${group})`);
        cpu.data[at] = value;
        return true;
      };
    }
  }
}
