import { chip } from "../../../src-core/model/chips.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import type { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";

/** A program in one main file, with headers that it includes in quotes. */
export interface OneFile {
  readonly language: keyof typeof mainFiles;
  readonly text: string;
  /** Name to text. */
  readonly headers: Readonly<Record<string, string>>;
}

export const mainFiles = { c: "main.c", "c++": "main.cpp", sketch: "main.ino" } as const;

/** Hz; `F_CPU` of what is read and of what is compiled beside it. */
export const clockHz = 16_000_000;

/** `cache` is for one language. */
export function readOneFile(
  { language, text, headers }: OneFile,
  chipName: string,
  grammar: Grammar,
  cache: ProgramCache,
): Program {
  const main = mainFiles[language];
  return readProgram({
    host: hostOfFiles({ ...headers, [main]: text }),
    units: [
      {
        mains: [main],
        language: language === "c" ? "c" : "c++",
        prelude: language === "sketch" ? ["Arduino.h"] : [],
      },
    ],
    chip: chip(chipName),
    clockHz,
    defines: new Map(),
    includePaths: [],
    grammar,
    cache,
  });
}
