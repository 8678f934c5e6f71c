import { Language, Parser } from "web-tree-sitter";
import { type RawTree, rawTree, type TokenOffsets } from "./raw-nodes.ts";

/** The loaded C++ grammar, ready to parse. */
export interface Grammar {
  /** Undefined where the grammar gives no tree at all; errors are part of one. */
  parse(text: string, offsets: TokenOffsets): RawTree | undefined;
}

export interface GrammarFiles {
  /** `web-tree-sitter.wasm` of the package `web-tree-sitter`. */
  readonly runtimeWasm: Uint8Array;
  /** `tree-sitter-cpp.wasm` of the package `tree-sitter-cpp`. */
  readonly grammarWasm: Uint8Array;
}

/**
 * Loads the grammar from its two files, which the front end has read.
 * Rejects where they are not the WebAssembly files that are asked for.
 */
export async function createGrammar(files: GrammarFiles): Promise<Grammar> {
  await Parser.init({ wasmBinary: files.runtimeWasm });
  const language = await Language.load(files.grammarWasm);
  const parser = new Parser();
  parser.setLanguage(language);
  return {
    parse(text, offsets) {
      const tree = parser.parse(text);
      if (tree === null) return undefined;
      try {
        return rawTree(tree, language.types, language.fields, offsets);
      } finally {
        tree.delete();
      }
    },
  };
}
