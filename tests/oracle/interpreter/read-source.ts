import type { Program } from "../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../src-core/reader/program/program-cache.ts";
import type { Grammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import { readOneFile } from "../../src-core/interpreter/read-one-file.ts";
import { type SourceProgram, targetOf } from "./source-program.ts";

/** Reads programs one after the other; what their headers share is lexed and parsed once. */
export function sourceReader(grammar: Grammar): (program: SourceProgram) => Program {
  const caches = { c: new ProgramCache(), "c++": new ProgramCache(), sketch: new ProgramCache() };
  return (source) => readOneFile(source, targetOf(source).chip, grammar, caches[source.language]);
}
