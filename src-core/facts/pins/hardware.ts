import type { Chip } from "../../model/chips/chip.ts";
import type { Hardware } from "../walk/machine.ts";
import { chipRegisters } from "./chip-registers.ts";
import { callCore } from "./core-functions.ts";
import { isLatchName, portWritten } from "./port-writes.ts";

/** The chip as the walk sees it: register names, and what ports and the sketch core's functions do to pins. */
export function hardwareOf(chip: Chip | undefined): Hardware {
  const registers = chipRegisters(chip);
  return {
    registerAt: registers.at,
    registerNamed: registers.named,
    isLatch: (register) => isLatchName(register.name),
    written: (write, machine) => portWritten(write, machine, registers),
    called: (call, machine) => callCore(call, machine, { chip, registers }),
  };
}
