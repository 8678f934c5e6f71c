import { readFileSync } from "node:fs";
import { join } from "node:path";
import { chip } from "../../../src-core/model/chips.ts";
import { standIns } from "../../../src-core/reader/headers/stand-ins.ts";
import { predefinedMacros } from "../../../src-core/reader/preprocess/predefined.ts";
import { preprocess } from "../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../src-core/reader/preprocess/preprocess-cache.ts";
import type { SourceHost } from "../../../src-core/reader/source-host.ts";
import type { Preprocessed } from "../../../src-core/reader/tokens.ts";

export function hostOfFolder(folder: string): SourceHost {
  return {
    readText(path) {
      try {
        return readFileSync(join(folder, path), "utf8");
      } catch {
        return undefined;
      }
    },
    listFolder: () => [],
  };
}

const cache = new PreprocessCache();

/** Reads a C program for an ATmega328P. */
export function readProgram(
  host: SourceHost,
  program: string,
  includePaths: readonly string[],
  clockHz?: number,
): Preprocessed {
  const target = chip("atmega328p");
  return preprocess({
    host,
    mains: [program],
    prelude: [],
    language: "c",
    defines: predefinedMacros(target, "c", clockHz),
    includePaths,
    standIns: standIns(target, "c"),
    cache,
  });
}
