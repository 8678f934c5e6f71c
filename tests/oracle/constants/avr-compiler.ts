import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A compiler of the machine and how it is called. */
export interface Compiler {
  readonly command: string;
  readonly objcopy: string;
  readonly flags: readonly string[];
  readonly extension: "c" | "cpp";
}

export const avrC: Compiler = {
  command: "avr-gcc",
  objcopy: "avr-objcopy",
  flags: ["-mmcu=atmega328p", "-std=gnu11"],
  extension: "c",
};

export const avrCpp: Compiler = {
  command: "avr-g++",
  objcopy: "avr-objcopy",
  flags: ["-mmcu=atmega328p", "-std=gnu++14"],
  extension: "cpp",
};

/** A 32-bit target with the sizes of `int`, `long` and pointers that Arm has; only compiled, never linked. */
export const ilp32C: Compiler = {
  command: "gcc",
  objcopy: "objcopy",
  flags: ["-m32", "-std=gnu11", "-funsigned-char", "-malign-double"],
  extension: "c",
};

/** Compiles a text and gives the bytes of sections of the object. */
export function sectionsOf(compiler: Compiler, text: string, sections: readonly string[]): readonly Buffer[] {
  const folder = mkdtempSync(join(tmpdir(), "constants-"));
  try {
    const source = join(folder, `constants.${compiler.extension}`);
    const object = join(folder, "constants.o");
    writeFileSync(source, text);
    execFileSync(compiler.command, [...compiler.flags, "-w", "-fwrapv", "-O0", "-c", source, "-o", object], {
      stdio: ["ignore", "ignore", "pipe"],
    });
    return sections.map((section) => {
      const raw = join(folder, `${section.slice(1)}.bin`);
      execFileSync(compiler.objcopy, ["-O", "binary", "-j", section, object, raw]);
      return readFileSync(raw);
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The lines of a text, counted from 0, in which the compiler finds an error. */
export function faultyLines(compiler: Compiler, text: string): ReadonlySet<number> {
  const language = compiler.extension === "c" ? "c" : "c++";
  const flags = [...compiler.flags, "-w", "-fwrapv", "-fsyntax-only", "-fmax-errors=0", "-x", language, "-"];
  const { stderr } = spawnSync(compiler.command, flags, { input: text, encoding: "utf8" });
  const lines = [...stderr.matchAll(/^<stdin>:(\d+):\d+: error:/gm)];
  return new Set(lines.map((match) => Number(match[1]) - 1));
}
