import type { Language } from "../../../../src-core/reader/lexer/scanner.ts";
import { preprocess } from "../../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles, type SourceHost } from "../../../../src-core/reader/source-host.ts";
import type { Preprocessed, Token } from "../../../../src-core/reader/tokens.ts";

export interface ReadSettings {
  readonly mains?: readonly string[];
  readonly prelude?: readonly string[];
  readonly language?: Language;
  readonly defines?: Readonly<Record<string, string>>;
  readonly includePaths?: readonly string[];
  readonly standIns?: Readonly<Record<string, string>>;
  readonly cache?: PreprocessCache;
  readonly hostOf?: (files: Readonly<Record<string, string>>) => SourceHost;
}

/** Preprocesses files given by path and text; `main.c` unless other main files are named. */
export function readFiles(
  files: Readonly<Record<string, string>>,
  settings: ReadSettings = {},
): Preprocessed {
  const standIns = settings.standIns ?? {};
  return preprocess({
    host: (settings.hostOf ?? hostOfFiles)(files),
    mains: settings.mains ?? ["main.c"],
    prelude: settings.prelude ?? [],
    language: settings.language ?? "c",
    defines: settings.defines ?? {},
    includePaths: settings.includePaths ?? [],
    standIns: (name) => standIns[name],
    cache: settings.cache ?? new PreprocessCache(),
  });
}

export function readText(text: string, settings: ReadSettings = {}): Preprocessed {
  return readFiles({ "main.c": text }, settings);
}

/** Token texts with one space between. */
export function spell(tokens: readonly Token[]): string {
  return tokens.map((token) => token.text).join(" ");
}

/** What a text becomes. */
export function expand(text: string, settings: ReadSettings = {}): string {
  return spell(readText(text, settings).tokens);
}
