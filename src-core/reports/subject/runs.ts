import { createMachine } from "../../interpreter/create-machine.ts";
import type { Machine } from "../../interpreter/machine.ts";
import type { InsteadFunction, Limits } from "../../interpreter/outcome.ts";
import type { Program } from "../../reader/program/program.ts";
import type { BareRegisters } from "./bare-registers.ts";
import { stopped } from "./not-tried.ts";

/** One call of an encoder or decoder; one that needs more does not end. */
export const limitsOfCall: Limits = { steps: 100_000, depth: 60 };

/** A machine after its reset. */
export function startedMachine(
  program: Program,
  registers: BareRegisters,
  instead: InsteadFunction | undefined,
  cancelled: (() => boolean) | undefined,
): Machine {
  const machine = createMachine({
    program,
    limits: limitsOfCall,
    registers,
    outside: undefined,
    instead,
    cancelled,
  });
  const reset = machine.reset();
  if (reset.kind === "stopped") throw stopped(reset.stop);
  return machine;
}
