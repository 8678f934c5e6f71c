import { chip } from "../../../src-core/model/chips.ts";
import type { Program } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import { readProgram } from "../../../src-core/reader/program/read-program.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import { chipName, clockHz, type SourceProgram } from "./source-program.ts";

/** Reads programs one after the other; what their headers share is lexed and parsed once. */
export function sourceReader(grammar: Grammar): (program: SourceProgram) => Program {
  const caches = { c: new ProgramCache(), "c++": new ProgramCache() };
  return ({ language, text, headers }) => {
    const main = language === "c" ? "main.c" : "main.cpp";
    return readProgram({
      host: hostOfFiles({ ...headers, [main]: text }),
      units: [{ mains: [main], language, prelude: [] }],
      chip: chip(chipName),
      clockHz,
      defines: new Map(),
      includePaths: [],
      grammar,
      cache: caches[language],
    });
  };
}
