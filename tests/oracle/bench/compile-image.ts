import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const programs = new URL("programs/", import.meta.url).pathname;

/** Compiles and links a program of `programs` for a chip; flash from address 0 in words. Throws the compiler's words. */
export async function compileImage(
  program: string,
  chip: string,
  hz: number,
  defines: Readonly<Record<string, string | number>> = {},
): Promise<Uint16Array> {
  const folder = await mkdtemp(join(tmpdir(), "bench-image-"));
  try {
    const elf = join(folder, "image.elf");
    const raw = join(folder, "image.bin");
    const flags = Object.entries({ F_CPU: `${hz}UL`, ...defines }).map(
      ([name, value]) => `-D${name}=${value}`,
    );
    await run("avr-gcc", [
      `-mmcu=${chip}`,
      "-std=gnu11",
      "-Os",
      "-Wall",
      "-Werror",
      ...flags,
      join(programs, program),
      "-o",
      elf,
    ]);
    await run("avr-objcopy", ["-O", "binary", "-j", ".text", "-j", ".data", elf, raw]);
    const bytes = await readFile(raw);
    return Uint16Array.from({ length: Math.ceil(bytes.length / 2) }, (_, word) =>
      2 * word + 1 < bytes.length ? bytes.readUInt16LE(2 * word) : (bytes[2 * word] ?? 0),
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
