import { execFile } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import type { Style } from "../../firmwares/planted/planted-fault.ts";
import type { Files } from "../../firmwares/wrong-version.ts";

const run = promisify(execFile);
const core = "/usr/share/arduino/hardware/arduino/avr";

/** What a style is made for. */
export interface Target {
  readonly chip: string;
  readonly hz: number;
  /** `sketch`: with the sketch core and this folder of its board variants. */
  readonly kind: "c" | "c++" | { readonly variant: string };
}

export const targets: Readonly<Record<Style, Target>> = {
  "busy-wait-c": { chip: "atmega168", hz: 7_372_800, kind: "c" },
  "class-sketch": { chip: "atmega2560", hz: 16_000_000, kind: { variant: "mega" } },
  "clock-interrupt-c": { chip: "atmega328p", hz: 16_000_000, kind: "c" },
  "remote-polling-c": { chip: "atmega328p", hz: 8_000_000, kind: "c" },
  "tiny-usi": { chip: "attiny85", hz: 8_000_000, kind: "c" },
  "usart-ring-cpp": { chip: "atmega2560", hz: 16_000_000, kind: "c++" },
};

/**
 * Compiles and links a firmware with every warning an error, those of the core's own sources aside; flash from address 0 in
 * words. Throws the compiler's words.
 */
export async function compileStyle(files: Files, { chip, hz, kind }: Target): Promise<Uint16Array> {
  const folder = await mkdtemp(join(tmpdir(), "style-"));
  try {
    const sources = join(folder, "sources");
    await mkdir(sources);
    await Promise.all(Object.entries(files).map(([name, text]) => writeFile(join(sources, name), text)));
    const common = [`-mmcu=${chip}`, `-DF_CPU=${hz}UL`, "-Os", "-ffunction-sections", "-fdata-sections"];
    const strict = ["-Wall", "-Wextra", "-Werror"];
    const named = (ending: string) => Object.keys(files).filter((name) => name.endsWith(ending));
    const elf = join(folder, "image.elf");
    const link = ["-Wl,--gc-sections", "-o", elf, "-lm"];
    if (typeof kind === "object") {
      const sketch = ["-std=gnu++11", "-fno-exceptions", "-fno-threadsafe-statics", "-DARDUINO=10819"];
      const includes = [`-I${core}/cores/arduino`, `-I${core}/variants/${kind.variant}`];
      const [main = ""] = named(".ino");
      const own: string[] = [];
      for (const name of [main, ...named(".cpp")]) {
        const object = join(folder, `${name}.o`);
        const language = name === main ? ["-x", "c++", "-include", "Arduino.h"] : [];
        const flags = [...common, ...sketch, ...strict, ...includes, ...language];
        await run("avr-g++", [...flags, "-c", join(sources, name), "-o", object]);
        own.push(object);
      }
      const coreSources = (await readdir(`${core}/cores/arduino`)).filter((name) =>
        /\.(c|cpp|S)$/.test(name),
      );
      const paths = coreSources.map((name) => `${core}/cores/arduino/${name}`);
      const flags = [...common, "-w", ...sketch, "-DDECIMAL_DIG=__DECIMAL_DIG__", ...includes];
      await run("avr-gcc", [...flags, ...own, ...paths, ...link]);
    } else {
      const [compiler, standard, ending] =
        kind === "c"
          ? (["avr-gcc", "-std=gnu11", ".c"] as const)
          : (["avr-g++", "-std=gnu++17", ".cpp"] as const);
      const paths = named(ending).map((name) => join(sources, name));
      await run(compiler, [...common, standard, ...strict, ...paths, ...link]);
    }
    const raw = join(folder, "image.bin");
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", elf, raw]);
    const bytes = await readFile(raw);
    return Uint16Array.from({ length: Math.ceil(bytes.length / 2) }, (_, word) =>
      2 * word + 1 < bytes.length ? bytes.readUInt16LE(2 * word) : (bytes[2 * word] ?? 0),
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
