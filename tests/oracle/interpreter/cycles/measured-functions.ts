import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { SourceProgram } from "../source-program.ts";

const folder = "tests/oracle/interpreter/cycles/functions";

/** A function and what it is called with; arguments as they stand in the source. */
export interface MeasuredFunction {
  /** For an interrupt handler the vector. */
  readonly name: string;
  readonly isHandler: boolean;
  readonly calls: readonly (readonly string[])[];
}

export interface MeasuredFile {
  readonly name: string;
  readonly program: SourceProgram;
  readonly functions: readonly MeasuredFunction[];
}

/** The files of functions, in the order of their names. */
export function measuredFiles(): readonly MeasuredFile[] {
  const header = readFileSync(join(folder, "measured.h"), "utf8");
  return readdirSync(folder)
    .filter((name) => name !== "measured.h")
    .sort()
    .map((name) => {
      const text = readFileSync(join(folder, name), "utf8");
      const functions = functionsIn(text);
      const language = name.endsWith(".cpp") ? "c++" : "c";
      return { name, functions, program: { language, text, headers: { "measured.h": header } } };
    });
}

/** `calls: (1, 2) (3, 4)` in a comment, and the name of the function behind it. */
function functionsIn(text: string): readonly MeasuredFunction[] {
  const heads = /\/\* calls: (.*) \*\/\n(?:ISR\((\w+)\)|MEASURED [\w ]+?(\w+)\()/g;
  return [...text.matchAll(heads)].map(([, calls = "", vector, name]) => ({
    name: vector ?? name ?? "",
    isHandler: vector !== undefined,
    calls: [...calls.matchAll(/\(([^)]*)\)/g)].map(([, given = ""]) =>
      given.split(",").flatMap((argument) => (argument.trim() === "" ? [] : [argument.trim()])),
    ),
  }));
}
