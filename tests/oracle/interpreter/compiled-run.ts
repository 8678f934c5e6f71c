import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { avrInstruction, CPU } from "avr8js";
import { chipName, clockHz, endOfTransmission, type SourceProgram, serialPort } from "./source-program.ts";

/** How a run of the compiled image went. */
export type CompiledRun =
  | { readonly kind: "sent"; readonly text: string; readonly cycles: number }
  /** The compiler's words, or what the program needed too much of. */
  | { readonly kind: "not-compiled" | "too-large" | "too-long"; readonly message: string };

const run = promisify(execFile);

const languages = {
  c: { compiler: "avr-gcc", extension: "c", flags: ["-std=gnu11"] },
  "c++": {
    compiler: "avr-g++",
    extension: "cpp",
    flags: ["-std=gnu++14", "-fno-exceptions", "-fno-threadsafe-statics"],
  },
} as const;

/** `new` and `delete`, which avr-libc leaves to the program. */
const support = `#include <stdlib.h>
void *operator new(size_t size) { return malloc(size); }
void *operator new[](size_t size) { return malloc(size); }
void operator delete(void *block) { free(block); }
void operator delete[](void *block) { free(block); }
void operator delete(void *block, size_t) { free(block); }
void operator delete[](void *block, size_t) { free(block); }
extern "C" void __cxa_pure_virtual() { abort(); }
`;

const memory = { start: 0x100, bytes: 16 * 1024, forVariables: 12 * 1024 };
/** `rjmp .-2`: where the start-up code ends after `main`. */
const jumpToItself = 0xcfff;

/** Compiles a program for AVR and runs it until it sends the end of transmission. */
export async function compiledRun(program: SourceProgram, cycleLimit = 40_000_000): Promise<CompiledRun> {
  const folder = await mkdtemp(join(tmpdir(), "compiled-run-"));
  try {
    const { compiler, extension, flags } = languages[program.language];
    const main = join(folder, `main.${extension}`);
    const files = [main];
    await writeFile(main, program.text);
    for (const [name, text] of Object.entries(program.headers)) await writeFile(join(folder, name), text);
    if (program.language === "c++") {
      files.push(join(folder, "support.cpp"));
      await writeFile(join(folder, "support.cpp"), support);
    }
    const image = join(folder, "image");
    const common = [
      `-mmcu=${chipName}`,
      `-DF_CPU=${clockHz}UL`,
      "-O1",
      "-w",
      "-fwrapv",
      "-fno-strict-aliasing",
    ];
    try {
      await run(compiler, [...common, ...flags, ...files, "-o", `${image}.elf`, "-lm"]);
    } catch (error) {
      return { kind: "not-compiled", message: firstError(error) };
    }
    const { stdout } = await run("avr-size", ["-B", `${image}.elf`]);
    const [, data = 0, bss = 0] = (stdout.split("\n")[1] ?? "").trim().split(/\s+/).map(Number);
    if (data + bss > memory.forVariables) {
      return { kind: "too-large", message: `variables take ${data + bss} bytes` };
    }
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", `${image}.elf`, `${image}.bin`]);
    return runImage(await readFile(`${image}.bin`), memory.start + data + bss, cycleLimit);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function runImage(image: Buffer, variablesEnd: number, cycleLimit: number): CompiledRun {
  const flash = new Uint8Array(128 * 1024);
  flash.set(image);
  const cpu = new CPU(new Uint16Array(flash.buffer), memory.bytes);
  const sent: number[] = [];
  let ended = false;
  cpu.readHooks[serialPort.status] = () => serialPort.ready;
  cpu.writeHooks[serialPort.data] = (value) => {
    ended ||= value === endOfTransmission;
    if (!ended) sent.push(value);
  };
  // Before the start-up code sets it the stack pointer is what the chip has at reset.
  while (!ended && cpu.progMem[cpu.pc] !== jumpToItself) {
    for (let instruction = 0; instruction < 16 && !ended; instruction += 1) avrInstruction(cpu);
    if (cpu.cycles > cycleLimit)
      return { kind: "too-long", message: `still running after ${cycleLimit} cycles` };
    if (cpu.cycles > 1000 && cpu.SP < variablesEnd)
      return { kind: "too-large", message: "the stack met the variables" };
  }
  if (!ended) return { kind: "too-long", message: "stopped before it had sent all" };
  return { kind: "sent", text: String.fromCharCode(...sent), cycles: cpu.cycles };
}

/** The compiler's first error, or else whatever kept it from running. */
function firstError(error: unknown): string {
  const words = error instanceof Error ? error.message : String(error);
  return words.split("\n").find((line) => /\berror\b|undefined reference|overflow/.test(line)) ?? words;
}
