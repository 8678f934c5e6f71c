import type { Chip } from "../chip/chip.ts";
import { connect, type Wiring } from "../chip/wiring.ts";
import type { BenchSide } from "../engine.ts";
import type { FirmwareChip } from "./firmware-chip.ts";

const statusRegister = 0x5f;
const globalFlag = 0x80;

/** A chip that was made without a program, wired to the bench, for an engine that runs sources. */
export function simulatedFirmwareChip(chip: Chip, wiring: Wiring, bench: BenchSide): FirmwareChip {
  const { core, cpu } = chip;
  connect(chip, wiring, bench.wires);
  core.moveBench = (time) => bench.advanceTo(time);
  return {
    get hz() {
      return core.clock.hz;
    },
    get cycles() {
      return cpu.cycles;
    },
    get nextEvent() {
      return core.events.next;
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
    happen: () => core.runNextEvent(),
    read: (address) => cpu.readData(address),
    write: (address, value) => cpu.writeData(address, value),
    pendingInterrupt: () => (chip.interruptsEnabled ? chip.pendingVector?.names[0] : undefined),
    enterInterrupt: () => chip.takeInterrupt(),
    leaveInterrupt: () => {
      cpu.data[statusRegister] = (cpu.data[statusRegister] ?? 0) | globalFlag;
    },
    takeRestless: () => {
      const { isRestless } = core;
      core.isRestless = false;
      return isRestless;
    },
  };
}
