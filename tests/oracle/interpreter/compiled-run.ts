import { CPU } from "avr8js";
import { step } from "../../../src-core/bench/engines/avr-step.ts";
import { compile, type Image } from "./compile.ts";
import { endOfTransmission, type SourceProgram, serialPort, targetOf } from "./source-program.ts";

/** How a run of the compiled image went. */
export type CompiledRun =
  | { readonly kind: "sent"; readonly text: string; readonly cycles: number }
  /** The compiler's words, or what the program needed too much of. */
  | { readonly kind: "not-compiled" | "too-large" | "too-long"; readonly message: string };

const ramStart = 0x100;
const flashBytes = 128 * 1024;
/** `rjmp .-2`: where the start-up code ends after `main`, and what is left of an empty endless loop. */
const jumpToItself = 0xcfff;

/** Compiles a program for AVR and runs it until it sends the end of transmission. */
export async function compiledRun(program: SourceProgram, cycleLimit = 10_000_000): Promise<CompiledRun> {
  const image = await compile(program);
  if (image.kind === "not-compiled") return image;
  return runImage(image, targetOf(program).ramBytes, cycleLimit);
}

/** Runs an image from reset until it sends the end of transmission. */
export function runImage(image: Image, ramBytes: number, cycleLimit: number): CompiledRun {
  const { variableBytes } = image;
  if (variableBytes > ramBytes * 0.75 || image.flash.length > flashBytes) {
    return {
      kind: "too-large",
      message: `${variableBytes} bytes of variables, ${image.flash.length} of code`,
    };
  }
  const variablesEnd = ramStart + variableBytes;
  const flash = new Uint8Array(flashBytes);
  flash.set(image.flash);
  const cpu = new CPU(new Uint16Array(flash.buffer), ramBytes);
  const sent: number[] = [];
  let ended = false;
  cpu.readHooks[serialPort.status] = () => serialPort.ready;
  cpu.writeHooks[serialPort.data] = (value) => {
    ended ||= value === endOfTransmission;
    if (!ended) sent.push(value);
  };
  while (!ended && cpu.progMem[cpu.pc] !== jumpToItself) {
    for (let instruction = 0; instruction < 16 && !ended; instruction += 1) step(cpu);
    if (cpu.cycles > cycleLimit) return { kind: "too-long", message: `runs on after ${cycleLimit} cycles` };
    // The stack pointer is set by the start-up code first.
    if (cpu.cycles > 1000 && cpu.SP < variablesEnd) {
      return { kind: "too-large", message: "the stack met the variables" };
    }
  }
  if (!ended) return { kind: "too-long", message: "stopped before it had sent all" };
  return { kind: "sent", text: String.fromCharCode(...sent), cycles: cpu.cycles };
}
