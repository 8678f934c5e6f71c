import { readFile } from "node:fs/promises";
import { createGrammar, type Grammar, grammarFileNames } from "../src-core/service/grammar.ts";

/** Loads the C++ grammar from the two files that the build puts beside this program. */
export async function loadGrammar(): Promise<Grammar> {
  const [runtimeWasm, grammarWasm] = await Promise.all([
    readFile(new URL(grammarFileNames.runtime, import.meta.url)),
    readFile(new URL(grammarFileNames.grammar, import.meta.url)),
  ]);
  return createGrammar({ runtimeWasm, grammarWasm });
}
