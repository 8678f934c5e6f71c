import { createMachine } from "../../../src-core/interpreter/create-machine.ts";
import type { Machine, MachineRequest } from "../../../src-core/interpreter/machine.ts";
import { type Outcome, usualLimits } from "../../../src-core/interpreter/outcome.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { grammar } from "../reader/typed/type-source.ts";
import { type OneFile, readOneFile } from "./read-one-file.ts";

const readGrammar = await grammar();

/** A machine for one file on an ATmega328P, reset, and a way to call its functions by name. */
export interface Ran {
  readonly machine: Machine;
  readonly program: Program;
  call(name: string, ...parameters: readonly number[]): Outcome;
  /** What source text stands at the place of a stop or a misstep. */
  textAt(at: { readonly first: { readonly start: number }; readonly last: { readonly end: number } }): string;
}

export function machineOf(
  text: string,
  given: Partial<MachineRequest> = {},
  language: OneFile["language"] = "c",
): Ran {
  const program = readOneFile({ language, text, headers: {} }, "atmega328p", readGrammar, new ProgramCache());
  const usual = {
    limits: usualLimits,
    registers: undefined,
    outside: undefined,
    instead: undefined,
    cancelled: undefined,
  };
  const machine = createMachine({ program, ...usual, ...given });
  machine.reset();
  return {
    machine,
    program,
    call(name, ...parameters) {
      const symbol = program.functions.find((candidate) => candidate.name === name);
      if (symbol === undefined) throw new Error(`no function ${name}`);
      return machine.call(symbol, parameters);
    },
    textAt: ({ first, last }) => text.slice(first.start, last.end),
  };
}
