import { execFile } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { clockHz, mainFiles, type SourceProgram, targetOf } from "./source-program.ts";

/** An image for flash, and how much memory its variables take. */
export interface Image {
  readonly kind: "image";
  readonly flash: Buffer;
  readonly variableBytes: number;
}

export interface CompilerError {
  readonly kind: "not-compiled";
  readonly message: string;
}

const run = promisify(execFile);

const coreFolder = "/usr/share/arduino/hardware/arduino/avr";
const coreIncludes = [`-I${coreFolder}/cores/arduino`, `-I${coreFolder}/variants/standard`];

const cppFlags = ["-std=gnu++14", "-fno-exceptions", "-fno-threadsafe-statics"];
const languages = {
  c: { compiler: "avr-gcc", flags: ["-std=gnu11"] },
  "c++": { compiler: "avr-g++", flags: cppFlags },
  // DECIMAL_DIG is not in avr-gcc's float.h for C++, and the core's text class asks for it.
  sketch: {
    compiler: "avr-g++",
    flags: [...cppFlags, ...coreIncludes, "-DARDUINO=10819", "-DDECIMAL_DIG=__DECIMAL_DIG__"],
  },
} as const;

/** For speed of the compiler, or for size as firmware is built. */
export type Optimization = "-O1" | "-Os";

const commonFlags = (chip: string, optimization: Optimization = "-O1"): readonly string[] => [
  ...[`-mmcu=${chip}`, `-DF_CPU=${clockHz}UL`],
  ...[optimization, "-w", "-fwrapv", "-fno-strict-aliasing", "-ffunction-sections", "-Wl,--gc-sections"],
];

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

/** Compiles and links a program as the chip is given it. */
export async function compile(
  program: SourceProgram,
  optimization: Optimization = "-O1",
): Promise<Image | CompilerError> {
  const folder = await mkdtemp(join(tmpdir(), "compiled-run-"));
  try {
    const { compiler, flags } = languages[program.language];
    const { chip } = targetOf(program);
    const inputs = await writeSources(program, folder, optimization);
    const elf = join(folder, "image.elf");
    try {
      await run(compiler, [...commonFlags(chip, optimization), ...flags, ...inputs, "-o", elf, "-lm"]);
    } catch (error) {
      return { kind: "not-compiled", message: firstError(error) };
    }
    const { stdout } = await run("avr-size", ["-B", elf]);
    const [, data = 0, bss = 0] = (stdout.split("\n")[1] ?? "").trim().split(/\s+/).map(Number);
    const raw = join(folder, "image.bin");
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", elf, raw]);
    return { kind: "image", flash: await readFile(raw), variableBytes: data + bss };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** What the compiler is given: files, and for a sketch the core's objects. */
async function writeSources(
  program: SourceProgram,
  folder: string,
  optimization: Optimization,
): Promise<readonly string[]> {
  const { language, text, headers } = program;
  for (const [name, header] of Object.entries(headers)) await writeFile(join(folder, name), header);
  if (language === "sketch") {
    const main = join(folder, "main.cpp");
    await writeFile(main, `#include <Arduino.h>\n${prototypes(text)}#line 1\n${text}`);
    return [main, ...(await coreObjects(optimization))];
  }
  const main = join(folder, mainFiles[language]);
  await writeFile(main, text);
  if (language === "c") return [main];
  const added = join(folder, "support.cpp");
  await writeFile(added, support);
  return [main, added];
}

/** What the sketch builder puts before a sketch: its functions may be called before they are declared. */
function prototypes(sketch: string): string {
  const plain = /^(?:void|int|long|byte|bool) \w+\([^){}]*\)(?=\n\{)/gm;
  return [...sketch.matchAll(plain)].map(([head]) => (head.includes("&") ? "" : `${head};\n`)).join("");
}

const cores = new Map<Optimization, Promise<SketchCore>>();

interface SketchCore {
  readonly folder: string;
  readonly objects: readonly string[];
}

/** The sketch core's objects, compiled once in a run. */
async function coreObjects(optimization: Optimization): Promise<readonly string[]> {
  const core = cores.get(optimization) ?? compileCore(optimization);
  cores.set(optimization, core);
  return (await core).objects;
}

/** To be called when no more sketches will be compiled. */
export async function removeCompiledCore(): Promise<void> {
  for (const core of cores.values()) await rm((await core).folder, { recursive: true, force: true });
  cores.clear();
}

async function compileCore(optimization: Optimization): Promise<SketchCore> {
  const folder = await mkdtemp(join(tmpdir(), "sketch-core-"));
  const sources = join(coreFolder, "cores/arduino");
  const files = (await readdir(sources)).filter((name) => /\.(c|cpp)$/.test(name));
  const objects: string[] = [];
  for (const name of files) {
    const { compiler, flags } = name.endsWith(".c") ? languages.c : languages.sketch;
    const object = join(folder, `${name}.o`);
    const source = join(sources, name);
    await run(compiler, [
      ...commonFlags("atmega328p", optimization),
      ...flags,
      ...coreIncludes,
      "-c",
      source,
      "-o",
      object,
    ]);
    objects.push(object);
  }
  return { folder, objects };
}

/** The compiler's first error, or else whatever kept it from running. */
function firstError(error: unknown): string {
  const words = error instanceof Error ? error.message : String(error);
  return words.split("\n").find((line) => /\berror\b|undefined reference|overflow/.test(line)) ?? words;
}
