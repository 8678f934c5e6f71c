import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import type { SourceProgram } from "./source-program.ts";

const run = promisify(execFile);

/** Sizes that fit a small chip; everything of the language that csmith draws by itself is kept. */
const options = [
  ...["--no-argc", "--concise"],
  ...["--max-funcs", "5"],
  ...["--max-block-depth", "3"],
  ...["--max-block-size", "4"],
  ...["--max-array-dim", "2"],
  ...["--max-array-len-per-dim", "5"],
  ...["--max-struct-fields", "6"],
  ...["--max-union-fields", "4"],
  ...["--max-expr-complexity", "7"],
];

/** The sizes of `int` and pointers on AVR, where csmith looks for them. */
const platform = "integer size = 2\npointer size = 2\n";

/** Every fourth program is in C++. */
const cppOptions = ["--lang-cpp", "--cpp11"];

/** The program that csmith makes of a seed. */
export async function csmithProgram(seed: number): Promise<SourceProgram> {
  const folder = await mkdtemp(join(tmpdir(), "csmith-"));
  try {
    await writeFile(join(folder, "platform.info"), platform);
    const language = seed % 4 === 0 ? "c++" : "c";
    const asked = ["--seed", String(seed), ...options, ...(language === "c" ? [] : cppOptions)];
    await run("csmith", [...asked, "--output", "program.c"], { cwd: folder });
    const text = await readFile(join(folder, "program.c"), "utf8");
    return { language, text, headers: await headers() };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The same program with every variable sent beside its name as it enters the checksum. */
export function traced(program: SourceProgram): SourceProgram {
  return { ...program, text: `#define CHECKSUM_TRACE\n${program.text}` };
}

let read: Promise<Readonly<Record<string, string>>> | undefined;

function headers(): Promise<Readonly<Record<string, string>>> {
  read ??= readHeaders();
  return read;
}

async function readHeaders(): Promise<Readonly<Record<string, string>>> {
  const [own, safeMath] = await Promise.all([
    readFile("tests/oracle/interpreter/csmith.h", "utf8"),
    readFile("/usr/include/csmith/safe_math.h", "utf8"),
  ]);
  return { "csmith.h": own, "safe_math.h": withShiftsOf16(safeMath) };
}

/**
 * safe_math.h takes it that what is shifted has 32 bits after promotion. With an `int` of 16 bits, values of 8 and
 * 16 bits become 16 wide only, and a shift by 16 and more is undefined (C11 6.5.7).
 */
function withShiftsOf16(safeMath: string): string {
  return safeMath
    .split(/^(?=STATIC )/m)
    .map((part) => (/shift_func_u?int(8|16)_t/.test(part) ? part.replaceAll(">= 32", ">= 16") : part))
    .join("");
}
