import { chip } from "../../../../src-core/model/chips.ts";
import { ChunkCache } from "../../../../src-core/reader/chunks/chunk.ts";
import { splitChunks } from "../../../../src-core/reader/chunks/split-chunks.ts";
import { standIns } from "../../../../src-core/reader/headers/stand-ins.ts";
import type { Language } from "../../../../src-core/reader/lexer/scanner.ts";
import { predefinedMacros } from "../../../../src-core/reader/preprocess/predefined.ts";
import { preprocess } from "../../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import type { MacroDefinition, Token } from "../../../../src-core/reader/tokens.ts";

const cache = new PreprocessCache();

export interface StandInUnit {
  readonly tokens: readonly Token[];
  /** Macros that the built-in headers define. */
  readonly macros: readonly MacroDefinition[];
}

/** What a source that includes these headers gets from the built-in ones, and what `text` behind them becomes. */
export function readWithStandIns(
  chipName: string,
  language: Language,
  headers: readonly string[],
  text = "",
): StandInUnit {
  const target = chip(chipName);
  const includes = headers.map((header) => `#include <${header}>\n`).join("");
  const { tokens, macros, problems, missing } = preprocess({
    host: hostOfFiles({ "main.c": includes + text }),
    mains: ["main.c"],
    prelude: [],
    language,
    defines: predefinedMacros(target, language, 16_000_000),
    includePaths: [],
    standIns: standIns(target, language),
    cache,
  });
  if (problems.length > 0 || missing.length > 0) throw new Error(JSON.stringify({ problems, missing }));
  const defined = [...macros.values()].filter(({ definition }) => definition !== undefined);
  return { tokens, macros: defined };
}

/** Text of tokens, each apart from the next. */
export function spell(tokens: readonly Token[]): string {
  return tokens.map((token) => token.text).join(" ");
}

/** The function prototypes among a unit's declarations. */
export function prototypes(unit: StandInUnit): readonly string[] {
  return splitChunks({ tokens: unit.tokens, textOf: () => undefined, cache: new ChunkCache() })
    .map(({ tokens }) => spell(tokens))
    .filter(
      (text) =>
        /\(.*\) .*;$/.test(text) && !/^(?:typedef|struct|enum|extern|static|class|template)\b/.test(text),
    );
}
