import { createMachine } from "../../../../src-core/interpreter/create-machine.ts";
import type { Clock } from "../../../../src-core/interpreter/outcome.ts";
import type { Program } from "../../../../src-core/reader/program/program.ts";
import type { MeasuredCall } from "./compiled-cycles.ts";
import { Inputs } from "./inputs.ts";
import type { MeasuredFile } from "./measured-functions.ts";

/** Each call of each function, in order, as the interpreter counts. */
export function estimatedCycles(file: MeasuredFile, program: Program): readonly MeasuredCall[] {
  const clock = new CountingClock();
  const inputs = new Inputs();
  const registers = new Map<number, number>();
  const machine = createMachine({
    program,
    limits: { steps: 0, depth: 100 },
    registers: {
      read: (address, bytes) => {
        if (Inputs.addresses.includes(address)) return inputs.look();
        let value = 0;
        for (let at = bytes - 1; at >= 0; at -= 1) value = value * 256 + (registers.get(address + at) ?? 0);
        return value;
      },
      write: (address, value, bytes) => {
        for (let at = 0; at < bytes; at += 1)
          registers.set(address + at, Math.floor(value / 256 ** at) % 256);
      },
    },
    outside: undefined,
    instead: undefined,
    clock,
    cancelled: undefined,
  });
  const started = machine.reset();
  if (started.kind === "stopped") throw new Error(started.stop.message);
  const argumentOf = (text: string): number => {
    if (!/^[a-z]/.test(text)) return Number(text);
    const variable = program.units[0]?.typed.variables.find(({ name }) => name === text);
    const address = variable && machine.addressOf(variable);
    if (address === undefined) throw new Error(`${file.name}: no ${text}`);
    return address;
  };
  return file.functions.flatMap(({ name, isHandler, calls }) => {
    const symbol = program.functions.find((each) => (isHandler ? each.vector : each.name) === name);
    if (symbol === undefined) throw new Error(`${file.name}: no ${name}`);
    return calls.map((given) => {
      machine.settle();
      clock.cycles = 0;
      const looks = inputs.looks;
      const outcome = machine.call(symbol, given.map(argumentOf));
      if (outcome.kind === "stopped") throw new Error(`${name}: ${outcome.stop.message}`);
      machine.settle();
      return { cycles: clock.cycles, looks: inputs.looks - looks };
    });
  });
}

/** Adds up. Inputs change with every look, so that no turn of a loop may be skipped. */
class CountingClock implements Clock {
  cycles = 0;

  budget(): number {
    return 1_000_000;
  }

  pass(cycles: number): boolean {
    this.cycles += cycles;
    return true;
  }

  happened(): number {
    return 0;
  }

  readonly runsEveryTurn = true;
}
