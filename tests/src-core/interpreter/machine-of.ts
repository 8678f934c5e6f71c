import { createMachine } from "../../../src-core/interpreter/create-machine.ts";
import type { Machine, MachineRequest } from "../../../src-core/interpreter/machine.ts";
import { type Outcome, usualLimits } from "../../../src-core/interpreter/outcome.ts";
import { chip } from "../../../src-core/model/chips.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { grammar } from "../reader/typed/type-source.ts";

const readGrammar = await grammar();

/** A machine for one file on an ATmega328P, reset, and a way to call its functions by name. */
export interface Ran {
  readonly machine: Machine;
  readonly program: Program;
  call(name: string, ...parameters: readonly number[]): Outcome;
  /** What source text stands at the place of a stop or a misstep. */
  textAt(at: { readonly first: { readonly start: number }; readonly last: { readonly end: number } }): string;
}

const languages = {
  c: { main: "main.c", language: "c", prelude: [] },
  "c++": { main: "main.cpp", language: "c++", prelude: [] },
  sketch: { main: "main.ino", language: "c++", prelude: ["Arduino.h"] },
} as const;

export function machineOf(
  text: string,
  given: Partial<MachineRequest> = {},
  written: keyof typeof languages = "c",
): Ran {
  const { main, language, prelude } = languages[written];
  const program = readProgram({
    host: hostOfFiles({ [main]: text }),
    units: [{ mains: [main], language, prelude }],
    chip: chip("atmega328p"),
    clockHz: 16_000_000,
    defines: new Map(),
    includePaths: [],
    grammar: readGrammar,
    cache: new ProgramCache(),
  });
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
