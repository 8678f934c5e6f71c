import type { Chip } from "../chip/chip.ts";
import { sleepOf } from "../chip/sleep.ts";
import { globalFlag, statusRegister } from "../chip/status-register.ts";
import { Timeline } from "../chip/timeline.ts";
import { connect, type Wiring } from "../chip/wiring.ts";
import type { BenchSide } from "../engine.ts";
import type { FirmwareWatch } from "../observing/firmware-watch.ts";
import type { FirmwareChip } from "./firmware-chip.ts";

/**
 * A chip that was made without a program, wired to the bench, for an engine that runs sources. `watch` is told what the
 * code looks at; it was made with the same chip before.
 */
export function simulatedFirmwareChip(
  chip: Chip,
  wiring: Wiring,
  bench: BenchSide,
  watch?: FirmwareWatch,
): FirmwareChip {
  const { core, cpu } = chip;
  connect(chip, wiring, bench.wires);
  const timeline = new Timeline(chip, bench);
  let wasReset = false;
  const interrupted: number[] = [];
  core.handlerRun = 0;
  chip.onWatchdogReset = () => {
    wasReset = true;
  };
  return {
    get cycles() {
      return cpu.cycles;
    },
    get due() {
      return timeline.due;
    },
    get place() {
      return core.place;
    },
    set place(place) {
      core.place = place;
    },
    pass: (cycles) => {
      cpu.cycles += cycles;
    },
    catchUp: () => timeline.catchUp(),
    read: (address, look) => {
      if (watch !== undefined) watch.look = look;
      return cpu.readData(address);
    },
    write: (address, value) => {
      if (address === statusRegister) cpu.data[address] = value;
      else core.writeFromCode(address, value);
    },
    pendingInterrupt: () =>
      core.interrupts.isPending && chip.interruptsEnabled ? chip.pendingVector?.names[0] : undefined,
    enterInterrupt: () => {
      chip.takeInterrupt();
      interrupted.push(core.handlerRun ?? 0);
      core.handlersEntered += 1;
      core.handlerRun = core.handlersEntered;
    },
    leaveInterrupt: () => {
      core.handlerRun = interrupted.pop() ?? 0;
      cpu.data[statusRegister] = (cpu.data[statusRegister] ?? 0) | globalFlag;
    },
    get wasReset() {
      return wasReset;
    },
    restartWatchdog: () => chip.watchdog.restart(),
    sleep: () => {
      const sleep = sleepOf(chip);
      if (sleep.kind === "awake") return undefined;
      if (sleep.kind === "never") return sleep;
      const isAwake = () => (chip.interruptsEnabled && core.interrupts.isPending) || wasReset || bench.ended;
      while (!isAwake()) {
        if (!timeline.skipToNext()) return { message: "the code sleeps, and nothing will ever wake it" };
      }
      return undefined;
    },
    get happenings() {
      return core.happenings;
    },
    get status() {
      return cpu.data[statusRegister] ?? 0;
    },
  };
}
