import { execFile } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const coreFolder = "/usr/share/arduino/hardware/arduino/avr";
const samples = "sample-workspace";
const programs = new URL("programs/", import.meta.url).pathname;

/** Compiles and links a program of `programs` for a chip; flash from address 0 in words. Throws the compiler's words. */
export function compileImage(
  program: string,
  chip: string,
  hz: number,
  defines: Readonly<Record<string, string | number>> = {},
): Promise<Uint16Array> {
  const flags = Object.entries(defines).map(([name, value]) => `-D${name}=${value}`);
  return linkImage(chip, hz, ["-std=gnu11", "-Wall", "-Werror", ...flags, join(programs, program)]);
}

/** The C sources of a sample, all of its folder. */
export async function compileSample(folder: string, chip: string, hz: number): Promise<Uint16Array> {
  const sources = (await readdir(join(samples, folder))).filter((name) => name.endsWith(".c"));
  const paths = sources.map((name) => join(samples, folder, name));
  return linkImage(chip, hz, ["-std=gnu11", "-Wall", "-Werror", ...paths]);
}

/** The sketch in a folder with the whole sketch core, for its board of the ATmega328P. */
export async function compileSketch(folder: string, hz: number): Promise<Uint16Array> {
  const names = (await readdir(folder)).sort();
  const isMain = (name: string) => name === `${basename(folder)}.ino`;
  const tabs = [...names.filter(isMain), ...names.filter((name) => name.endsWith(".ino") && !isMain(name))];
  const texts = await Promise.all(tabs.map((name) => readFile(join(folder, name), "utf8")));
  const built = await mkdtemp(join(tmpdir(), "bench-sketch-"));
  try {
    const main = join(built, "sketch.cpp");
    const text = texts.join("\n");
    await writeFile(main, `#include <Arduino.h>\n${prototypes(text)}${text}`);
    const core = join(coreFolder, "cores/arduino");
    const coreSources = (await readdir(core)).filter((name) => /\.(c|cpp|S)$/.test(name));
    return await linkImage("atmega328p", hz, [
      ...["-w", "-std=gnu++11", "-fno-exceptions", "-fno-threadsafe-statics", "-DARDUINO=10819"],
      ...["-DDECIMAL_DIG=__DECIMAL_DIG__", `-I${core}`, `-I${join(coreFolder, "variants/standard")}`],
      `-I${folder}`,
      main,
      ...names.filter((name) => name.endsWith(".cpp")).map((name) => join(folder, name)),
      ...coreSources.map((name) => join(core, name)),
    ]);
  } finally {
    await rm(built, { recursive: true, force: true });
  }
}

/** What the sketch builder puts before a sketch: its functions may be called before they are declared. */
function prototypes(sketch: string): string {
  const heads = sketch.matchAll(
    /^((?:void|bool|int|long|byte|uint8_t|unsigned long) \w+\([^(){};]*\))\s*\{/gm,
  );
  return [...heads].map(([, head]) => (head?.includes("&") ? "" : `${head};\n`)).join("");
}

async function linkImage(chip: string, hz: number, inputs: readonly string[]): Promise<Uint16Array> {
  const folder = await mkdtemp(join(tmpdir(), "bench-image-"));
  try {
    const elf = join(folder, "image.elf");
    const raw = join(folder, "image.bin");
    const common = [`-mmcu=${chip}`, `-DF_CPU=${hz}UL`, "-Os", "-ffunction-sections", "-Wl,--gc-sections"];
    await run("avr-gcc", [...common, ...inputs, "-o", elf, "-lm"]);
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", elf, raw]);
    const bytes = await readFile(raw);
    return Uint16Array.from({ length: Math.ceil(bytes.length / 2) }, (_, word) =>
      2 * word + 1 < bytes.length ? bytes.readUInt16LE(2 * word) : (bytes[2 * word] ?? 0),
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
