import { splitChunks } from "../chunks/split-chunks.ts";
import { preprocess } from "../preprocess/preprocess.ts";
import type { SourceHost } from "../source-host.ts";
import type { Grammar } from "../syntax/grammar/grammar.ts";
import { parseUnit } from "../syntax/parse-unit.ts";
import type { Token } from "../tokens.ts";
import { type TypeUnitInput, type Typing, typeUnit } from "../typed/type-unit.ts";
import type { DataModel } from "../types/types.ts";
import type { ProgramUnit, UnitRequest } from "./program.ts";
import type { KeptUnit, ProgramCache } from "./program-cache.ts";
import { recordingHost, stillAnswers } from "./recording-host.ts";

/** What all units of a project are read with. */
export interface Surroundings {
  readonly host: SourceHost;
  /** Macros from outside, the compiler's own among them: name to body. */
  readonly defines: Readonly<Record<string, string>>;
  /** Folders of the workspace where includes are looked for, in order. */
  readonly includePaths: readonly string[];
  /** Text of a built-in header by its name. */
  readonly standIns: (name: string) => string | undefined;
  readonly model: DataModel;
  readonly grammar: Grammar;
  readonly cache: ProgramCache;
}

/**
 * Reads one translation unit: preprocesses, parses and types it. Where neither the request nor any file it
 * asked for has changed, the unit of last time is given, whole; where something changed, what did not change is
 * taken from the cache. Never throws.
 */
export function readUnit(request: UnitRequest, surroundings: Surroundings): ProgramUnit {
  const { host, cache, defines, includePaths, model } = surroundings;
  const key = request.mains.join("\n");
  const { mains, language, prelude } = request;
  const circumstances = JSON.stringify([
    mains,
    language,
    prelude,
    defines,
    includePaths,
    model,
    standInKey(surroundings),
  ]);
  const kept = cache.units.get(key);
  if (kept !== undefined && kept.circumstances === circumstances && stillAnswers(host, kept.journal)) {
    return kept.unit;
  }
  const recording = recordingHost(host);
  const before = kept?.circumstances === circumstances ? kept.typing : undefined;
  const { unit, typing } = readAnew(request, { ...surroundings, host: recording }, before);
  cache.units.set(key, { circumstances, journal: recording.journal, unit, typing });
  return unit;
}

const standInNumbers = new WeakMap<Surroundings["standIns"], number>();
let standInsSeen = 0;

/** Two sets of stand-in headers are the same where they are one function. */
function standInKey({ standIns }: Surroundings): number {
  const known = standInNumbers.get(standIns);
  if (known !== undefined) return known;
  standInsSeen += 1;
  standInNumbers.set(standIns, standInsSeen);
  return standInsSeen;
}

function readAnew(
  request: UnitRequest,
  surroundings: Surroundings,
  before: Typing | undefined,
): Pick<KeptUnit, "unit" | "typing"> {
  const { mains, language, prelude } = request;
  const { host, defines, includePaths, standIns, cache, grammar, model } = surroundings;
  const preprocessed = preprocess({
    host,
    mains,
    prelude,
    language,
    defines,
    includePaths,
    standIns,
    cache: cache.preprocess,
  });
  const chunks = splitChunks({
    tokens: preprocessed.tokens,
    textOf: (file) => host.readText(file),
    cache: cache.chunks,
  });
  const input: TypeUnitInput = {
    mains,
    language,
    model,
    chunks: parseUnit(chunks, language, grammar, cache.syntax),
  };
  const typing = typeUnit(input, before);
  const { typed, parts } = typing;
  const tokens = withKept(preprocessed.tokens, parts);
  return { unit: { mains, language, prelude, preprocessed: { ...preprocessed, tokens }, typed }, typing };
}

/** Tokens of a unit, those of nodes that were kept in the place of their like. */
function withKept(read: readonly Token[], parts: Typing["parts"]): readonly Token[] {
  if (parts.every(({ given, passage }) => given.tokens === passage.tokens)) return read;
  const tokens = read.slice();
  let at = 0;
  for (const { given, passage } of parts) {
    const isKept = given.tokens !== passage.tokens;
    for (const token of passage.tokens) {
      if (isKept) tokens[at] = token;
      at += 1;
    }
  }
  return tokens;
}
