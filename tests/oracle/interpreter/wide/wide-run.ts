import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { mainFiles, type SourceProgram } from "../source-program.ts";

const run = promisify(execFile);
const here = "tests/oracle/interpreter/wide";

/**
 * i386 with what sets the 32-bit targets of the reader apart from it: `char` unsigned, 64-bit objects at multiples of 8
 * bytes, floating arithmetic in just its own precision.
 */
const flags = [
  ...["-m32", "-ffreestanding", "-nostdlib", "-static", "-malign-double", "-funsigned-char"],
  ...["-mfpmath=sse", "-msse2", "-O1", "-w", "-fwrapv", "-fno-strict-aliasing", "-fno-pic", "-no-pie"],
  ...["-fno-stack-protector", "-I", here],
];
const cppFlags = ["-std=gnu++14", "-fno-exceptions", "-fno-rtti", "-fno-threadsafe-statics"];

/** What a program sends when it runs as a 32-bit one, on an emulator; an error where it cannot be made. */
export async function wideRun(program: SourceProgram): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "wide-run-"));
  try {
    for (const [name, text] of Object.entries(program.headers)) await writeFile(join(folder, name), text);
    const main = join(folder, mainFiles[program.language]);
    await writeFile(main, program.text);
    const support = join(folder, "support.o");
    await run("gcc", [
      ...flags,
      "-fno-tree-loop-distribute-patterns",
      "-c",
      `${here}/support.c`,
      "-o",
      support,
    ]);
    const image = join(folder, "image");
    const own = program.language === "c" ? ["-std=gnu11"] : cppFlags;
    await run(program.language === "c" ? "gcc" : "g++", [...flags, ...own, main, support, "-o", image]);
    // Not by the host itself: kernels of 64 bits need not run such programs.
    const { stdout } = await run("qemu-i386", [image], { encoding: "latin1", timeout: 60_000 });
    return stdout;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
