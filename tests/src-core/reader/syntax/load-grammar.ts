import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createGrammar, type Grammar } from "../../../../src-core/reader/syntax/grammar/grammar.ts";

const require = createRequire(import.meta.url);

/** The grammar from the installed packages, as a front end would load it. */
export function loadGrammar(): Promise<Grammar> {
  return createGrammar({
    runtimeWasm: readFileSync(require.resolve("web-tree-sitter/web-tree-sitter.wasm")),
    grammarWasm: readFileSync(require.resolve("tree-sitter-cpp/tree-sitter-cpp.wasm")),
  });
}
