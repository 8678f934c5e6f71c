import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { ReadUnit } from "../../../src-core/notes/attachment/declared.ts";
import { type NoteFacts, readNoteFacts } from "../../../src-core/notes/note-facts.ts";
import { readSettings } from "../../../src-core/notes/settings/read-settings.ts";
import type { Vocabulary } from "../../../src-core/notes/vocabulary.ts";
import { ChunkCache } from "../../../src-core/reader/chunks/chunk.ts";
import { splitChunks } from "../../../src-core/reader/chunks/split-chunks.ts";
import { lexFile } from "../../../src-core/reader/lexer/lex-file.ts";
import { preprocess } from "../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createGrammar } from "../../../src-core/reader/syntax/grammar/grammar.ts";
import { parseUnit } from "../../../src-core/reader/syntax/parse-unit.ts";
import { SyntaxCache } from "../../../src-core/reader/syntax/syntax-cache.ts";
import { typeUnit } from "../../../src-core/reader/typed/type-unit.ts";
import { avrModel } from "../../../src-core/reader/types/data-models.ts";
import { SMALL_VOCABULARY } from "./small-vocabulary.ts";

const require = createRequire(import.meta.url);

const grammar = await createGrammar({
  runtimeWasm: readFileSync(require.resolve("web-tree-sitter/web-tree-sitter.wasm")),
  grammarWasm: readFileSync(require.resolve("tree-sitter-cpp/tree-sitter-cpp.wasm")),
});

type Files = Readonly<Record<string, string>>;

function readUnit(files: Files, main: string): ReadUnit {
  const language = main.endsWith(".c") ? "c" : "c++";
  const preprocessed = preprocess({
    host: hostOfFiles(files),
    mains: [main],
    prelude: [],
    language,
    defines: {},
    includePaths: [],
    standIns: () => undefined,
    cache: new PreprocessCache(),
  });
  const split = splitChunks({
    tokens: preprocessed.tokens,
    textOf: (file) => files[file],
    cache: new ChunkCache(),
  });
  const chunks = parseUnit(split, language, grammar, new SyntaxCache());
  return { preprocessed, typed: typeUnit({ language, model: avrModel, mains: [main], chunks }).typed };
}

/** Notes of some files; every file that is no header is a unit. edgewise.json counts where there is one. */
export function readFacts(files: Files, vocabulary: Vocabulary = SMALL_VOCABULARY): NoteFacts {
  const sources = Object.keys(files).filter((file) => !file.endsWith(".json"));
  const units = sources.filter((file) => !file.endsWith(".h")).map((main) => readUnit(files, main));
  const lexed = sources.map((file) => lexFile(file, files[file] ?? "", file.endsWith(".cpp") ? "c++" : "c"));
  const { settings } = readSettings("edgewise.json", files["edgewise.json"] ?? "{}", vocabulary);
  return readNoteFacts(lexed, units, settings, vocabulary);
}
