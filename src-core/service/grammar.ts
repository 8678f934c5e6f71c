import { createGrammar, type Grammar, type GrammarFiles } from "../reader/syntax/grammar/grammar.ts";

/** Names of the two files that `createGrammar` needs, in the packages they come from and beside the programs. */
export const grammarFileNames = {
  runtime: "web-tree-sitter.wasm",
  grammar: "tree-sitter-cpp.wasm",
} as const;

export { createGrammar, type Grammar, type GrammarFiles };
