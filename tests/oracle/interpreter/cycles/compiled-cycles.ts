import { CPU } from "avr8js";
import { step } from "../../../../src-core/bench/engines/avr-step.ts";
import { compile } from "../compile.ts";
import { targetOf } from "../source-program.ts";
import { Inputs } from "./inputs.ts";
import type { MeasuredFile } from "./measured-functions.ts";

/** GPIOR0 of the ATmega1284P (data sheet, register summary): written before each call that is measured. */
const marker = 0x3e;
const icall = 0x9509;

/** CALL on a chip with a program counter of 16 bits (AVR Instruction Set Manual). */
const callCycles = 4;
/** "The interrupt execution response is four clock cycles minimum", "a jump, and this jump takes three" (data sheet). */
const responseCycles = 4 + 3;

export interface MeasuredCall {
  readonly cycles: number;
  /** How often it looked at inputs. */
  readonly looks: number;
}

/** Each call of each function, in order: CALL and RET, or the response to an interrupt and RETI, and all between. */
export async function compiledCycles(file: MeasuredFile): Promise<readonly MeasuredCall[]> {
  const calls = file.functions.flatMap((each) => each.calls.map((given) => ({ ...each, given })));
  const lines = calls.map(
    ({ name, given }, index) =>
      `{ __typeof__(${name}) *volatile called = ${name}; GPIOR0 = ${index + 1}; called(${given.map(asArgument).join(", ")}); }`,
  );
  const text = `${file.program.text}\nint main(void)\n{\n${lines.join("\n")}\n  GPIOR0 = 0xff;\n  for (;;) { }\n}\n`;
  const program = { ...file.program, text };
  const image = await compile(program, "-Os");
  if (image.kind === "not-compiled") throw new Error(`${file.name}: ${image.message}`);
  const flash = new Uint8Array(128 * 1024);
  flash.set(image.flash);
  const cpu = new CPU(new Uint16Array(flash.buffer), targetOf(program).ramBytes);
  const inputs = new Inputs();
  for (const address of Inputs.addresses) cpu.readHooks[address] = () => inputs.look();
  return calls.map(({ name, isHandler }, index) => {
    runUntil(cpu, () => cpu.data[marker] === index + 1 && cpu.progMem[cpu.pc] === icall);
    const { SP: stack } = cpu;
    const looks = inputs.looks;
    step(cpu);
    const start = cpu.cycles;
    runUntil(cpu, () => cpu.SP >= stack);
    if (cpu.SP !== stack) throw new Error(`${name} left the stack at ${cpu.SP} instead of ${stack}`);
    const entry = isHandler ? responseCycles : callCycles;
    return { cycles: cpu.cycles - start + entry, looks: inputs.looks - looks };
  });
}

/** Arrays and objects are handed over by their addresses, which is what the functions take. */
function asArgument(argument: string): string {
  return /^[a-z]/.test(argument) ? `(void *)&${argument}` : argument;
}

const mostInstructions = 1_000_000;

function runUntil(cpu: CPU, isThere: () => boolean): void {
  for (let count = 0; !isThere(); count += 1) {
    if (count > mostInstructions) throw new Error(`still running at ${cpu.pc * 2} of flash`);
    step(cpu);
  }
}
