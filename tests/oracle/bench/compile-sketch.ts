import { execFile } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const core = "/usr/share/arduino/hardware/arduino/avr";

/** Flags as the core's `platform.txt` gives them, all in one step; DECIMAL_DIG is not in avr-gcc's float.h for C++. */
const common = ["-Os", "-w", "-ffunction-sections", "-fdata-sections", "-flto"];
const includes = [`-I${core}/cores/arduino`, `-I${core}/variants/standard`];
const defines = ["-DARDUINO=10819", "-DARDUINO_AVR_UNO", "-DARDUINO_ARCH_AVR"];
const c = { compiler: "avr-gcc", flags: ["-std=gnu11"] };
const assembly = { compiler: "avr-gcc", flags: ["-x", "assembler-with-cpp"] };
const cpp = {
  compiler: "avr-g++",
  flags: [
    ...["-std=gnu++11", "-fpermissive", "-fno-exceptions", "-fno-threadsafe-statics"],
    "-DDECIMAL_DIG=__DECIMAL_DIG__",
  ],
};

/**
 * Compiles a sketch with the sketch core for an ATmega328P, as the board's tools do; flash from address 0 in words.
 * `files` by name; those that end in `.cpp` are compiled. Throws the compiler's words.
 */
export async function compileSketch(
  files: Readonly<Record<string, string>>,
  hz = 16_000_000,
): Promise<Uint16Array> {
  const folder = await mkdtemp(join(tmpdir(), "bench-sketch-"));
  try {
    const machine = ["-mmcu=atmega328p", `-DF_CPU=${hz}L`];
    const compile = async (source: string, object: string): Promise<string> => {
      const { compiler, flags } = source.endsWith(".cpp") ? cpp : source.endsWith(".S") ? assembly : c;
      const all = [...machine, ...common, ...flags, ...defines, ...includes, `-I${folder}`];
      await run(compiler, ["-c", ...all, source, "-o", join(folder, object)]);
      return join(folder, object);
    };
    const parts: string[] = [];
    for (const file of await readdir(`${core}/cores/arduino`)) {
      if (/\.(c|cpp|S)$/.test(file))
        parts.push(await compile(`${core}/cores/arduino/${file}`, `core-${file}.o`));
    }
    const archive = join(folder, "core.a");
    await run("avr-gcc-ar", ["rcs", archive, ...parts]);
    for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
    const objects: string[] = [];
    for (const name of Object.keys(files))
      if (name.endsWith(".cpp")) objects.push(await compile(join(folder, name), `${name}.o`));
    const elf = join(folder, "sketch.elf");
    const linking = [...machine, ...common, "-fuse-linker-plugin", "-Wl,--gc-sections"];
    await run("avr-gcc", [...linking, ...objects, archive, "-lm", "-o", elf]);
    const raw = join(folder, "sketch.bin");
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", elf, raw]);
    const bytes = await readFile(raw);
    return Uint16Array.from({ length: Math.ceil(bytes.length / 2) }, (_, word) =>
      2 * word + 1 < bytes.length ? bytes.readUInt16LE(2 * word) : (bytes[2 * word] ?? 0),
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
