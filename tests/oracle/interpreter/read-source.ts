import { chip } from "../../../src-core/model/chips.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import { clockHz, mainFiles, type SourceProgram, targetOf } from "./source-program.ts";

/** Reads programs one after the other; what their headers share is lexed and parsed once. */
export function sourceReader(grammar: Grammar): (program: SourceProgram) => Program {
  const caches = { c: new ProgramCache(), "c++": new ProgramCache(), sketch: new ProgramCache() };
  return (source) => {
    const { language, text, headers } = source;
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
      chip: chip(targetOf(source).chip),
      clockHz,
      defines: new Map(),
      includePaths: [],
      grammar,
      cache: caches[language],
    });
  };
}
