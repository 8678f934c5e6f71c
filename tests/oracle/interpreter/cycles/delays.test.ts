import { CPU } from "avr8js";
import { expect, test } from "vitest";
import { step } from "../../../../src-core/bench/engines/avr-step.ts";
import { createMachine } from "../../../../src-core/interpreter/create-machine.ts";
import { cyclesOfDelay } from "../../../../src-core/interpreter/library/delays.ts";
import { grammar } from "../../../src-core/reader/typed/type-source.ts";
import { compile } from "../compile.ts";
import { sourceReader } from "../read-source.ts";
import { clockHz, type SourceProgram } from "../source-program.ts";

/*
 * Delays of avr-libc, compiled and run on a simulated chip: the cycles between two SBI, less what loads the argument of
 * the loops (one LDI for each byte) and the second SBI itself.
 */
const delays = [
  { name: "_delay_us", argument: "1", loads: 0 },
  { name: "_delay_us", argument: "0.3", loads: 0 },
  { name: "_delay_us", argument: "52.083", loads: 0 },
  { name: "_delay_us", argument: "833.333", loads: 0 },
  { name: "_delay_us", argument: "-5", loads: 0 },
  { name: "_delay_ms", argument: "0.1", loads: 0 },
  { name: "_delay_ms", argument: "7.7", loads: 0 },
  { name: "_delay_ms", argument: "20", loads: 0 },
  { name: "__builtin_avr_delay_cycles", argument: "1", loads: 0 },
  { name: "__builtin_avr_delay_cycles", argument: "12345", loads: 0 },
  { name: "_delay_loop_1", argument: "1", loads: 1 },
  { name: "_delay_loop_1", argument: "200", loads: 1 },
  { name: "_delay_loop_1", argument: "0", loads: 1 },
  { name: "_delay_loop_2", argument: "1", loads: 2 },
  { name: "_delay_loop_2", argument: "1000", loads: 2 },
  { name: "_delay_loop_2", argument: "0", loads: 2 },
] as const;

const read = sourceReader(await grammar());

/** SBI takes two cycles (AVR Instruction Set Manual). */
const sbi = 2;
/** PORTB of the ATmega1284P (data sheet, register summary). */
const portB = 0x25;

function programOf(name: string, argument: string): SourceProgram {
  const text = `#include <avr/io.h>
#include <util/delay.h>
int main(void)
{
    PORTB |= 1;
    ${name}(${argument});
    PORTB |= 2;
    for (;;) {
    }
}
`;
  return { language: "c", text, headers: {} };
}

async function compiled(program: SourceProgram): Promise<number> {
  const image = await compile(program, "-Os");
  if (image.kind === "not-compiled") throw new Error(image.message);
  const flash = new Uint8Array(128 * 1024);
  flash.set(image.flash);
  const cpu = new CPU(new Uint16Array(flash.buffer), 16 * 1024);
  const until = (value: number): number => {
    while (cpu.data[portB] !== value) step(cpu);
    return cpu.cycles;
  };
  const start = until(1);
  return until(3) - start - sbi;
}

/** Cycles between the two writes to the port, less that of the second. */
function interpreted(program: SourceProgram): number {
  let cycles = 0;
  const writes: number[] = [];
  const typed = read(program);
  const machine = createMachine({
    program: typed,
    limits: { steps: 0, depth: 100 },
    registers: {
      read: () => 0,
      write: (address) => {
        if (address === portB) writes.push(cycles);
      },
    },
    outside: undefined,
    instead: undefined,
    clock: {
      budget: () => 1_000_000,
      pass: (passed) => {
        cycles += passed;
        return writes.length < 2;
      },
      happened: () => 0,
      runsEveryTurn: true,
    },
    cancelled: undefined,
  });
  machine.reset();
  const main = typed.functions.find(({ name }) => name === "main");
  if (main === undefined) throw new Error("no main");
  expect(machine.call(main, [])).toMatchObject({ kind: "stopped", stop: { reason: "ended" } });
  const [first = 0, second = 0] = writes;
  return second - first - sbi;
}

test.each(delays)("$name($argument)", async ({ name, argument, loads }) => {
  const program = programOf(name, argument);
  const cycles = await compiled(program);
  expect(cyclesOfDelay(name, [Number(argument)], clockHz)).toBe(cycles - loads);
  expect(interpreted(program)).toBe(cycles);
});
