import { spawnSync } from "node:child_process";

export interface Compiler {
  readonly name: "gcc" | "avr-gcc";
  readonly command: string;
  readonly options: readonly string[];
}

export const gcc: Compiler = { name: "gcc", command: "gcc", options: [] };
export const avrGcc: Compiler = { name: "avr-gcc", command: "avr-gcc", options: ["-mmcu=atmega328p"] };

export interface PreprocessorOutput {
  /** Text of each program after preprocessing, without line markers and pragmas. */
  readonly texts: ReadonlyMap<string, string>;
  /** Programs that the compiler has errors for. */
  readonly broken: ReadonlySet<string>;
  /** Lines of the errors. */
  readonly errorLines: readonly number[];
}

/** Preprocesses all programs in one process; `-E` prints them one behind the other, each with its line markers. */
export function preprocessWith(
  compiler: Compiler,
  folder: string,
  programs: readonly string[],
  options: readonly string[] = [],
): PreprocessorOutput {
  const { output, errors } = run(compiler, folder, [
    ...compiler.options,
    "-E",
    "-w",
    ...options,
    ...programs,
  ]);
  const texts = new Map<string, string>(programs.map((program) => [program, ""]));
  let current = "";
  for (const line of output.split("\n")) {
    const marker = /^# \d+ "([^"]*)"/.exec(line);
    if (marker !== null) {
      if (texts.has(marker[1] ?? "")) current = marker[1] ?? "";
    } else if (!/^#(?:pragma|ident)\b/.test(line)) texts.set(current, `${texts.get(current) ?? ""}${line}\n`);
  }
  const found = [...errors.matchAll(/^([^:\s]+):(\d+)(?::\d+)?: (?:fatal )?error/gm)];
  return {
    texts,
    broken: new Set(found.map(([, program = ""]) => program)),
    errorLines: found.map(([, , line]) => Number(line)),
  };
}

function run(
  compiler: Compiler,
  folder: string,
  options: readonly string[],
): { output: string; errors: string } {
  const settings = { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28 } as const;
  const { error, stdout, stderr } = spawnSync(compiler.command, [...options], settings);
  if (error !== undefined) throw error;
  return { output: stdout, errors: stderr };
}
