import type { NotUnderstood } from "../../finding.ts";
import type { ChunkSyntax } from "../syntax/nodes.ts";
import { isStandIn, type Token, visibleRange } from "../tokens.ts";
import { type Context, makeUnitState, type UnitSetting, type UnitState } from "./context.ts";
import { declare } from "./declarations.ts";
import type { FunctionSymbol, TypedUnit, Variable } from "./nodes.ts";

/** A run of declarations with the tokens its places refer to. */
export interface TypedChunkInput {
  readonly tokens: readonly Token[];
  readonly syntax: ChunkSyntax;
}

export interface TypeUnitInput extends UnitSetting {
  /** The main files, in reading order. */
  readonly mains: readonly string[];
  /** Chunks in the order in which they stand in the unit, stand-in headers first. */
  readonly chunks: readonly TypedChunkInput[];
}

/**
 * Types a translation unit: resolves every name, gives every expression its type on the target and writes
 * implicit conversions out. Bodies of functions see everything declared in the unit, so that a sketch needs no
 * prototypes. Never throws: what is not understood is `unresolved`, `not-understood` or a problem.
 */
export function typeUnit(input: TypeUnitInput): TypedUnit {
  const unit = makeUnitState(input);
  for (const chunk of input.chunks) {
    const context: Context = { unit, tokens: chunk.tokens, scope: unit.global, body: undefined };
    for (const part of chunk.syntax.notUnderstood) unit.problems.push(problemOf(chunk.tokens, part));
    for (const declaration of chunk.syntax.declarations) declare(context, declaration);
  }
  return finish(unit, input);
}

function problemOf(tokens: readonly Token[], part: ChunkSyntax["notUnderstood"][number]): NotUnderstood {
  const first = tokens[part.first] ?? tokens[tokens.length - 1];
  const last = tokens[Math.max(part.first, part.end - 1)] ?? first;
  const span = first && last ? visibleRange(first, last) : { file: "", start: 0, end: 0 };
  return { span, message: part.what };
}

/** Reads what waited until asked for, of the author's own functions and variables; then nothing changes. */
function finish(unit: UnitState, input: TypeUnitInput): TypedUnit {
  const functions: FunctionSymbol[] = [];
  const variables: Variable[] = [];
  for (const symbol of unit.symbols) {
    if (symbol.kind === "function") {
      functions.push(symbol);
      if (!symbol.standIn) void symbol.definition;
    } else if (symbol.kind === "variable") {
      variables.push(symbol);
      if (!isStandIn(symbol.at.first.file)) void symbol.initializer;
    }
  }
  return {
    mains: input.mains,
    language: input.language,
    model: input.model,
    symbols: [...unit.symbols],
    functions,
    variables,
    locals: unit.locals,
    classes: unit.classes,
    fieldPlaces: unit.fieldPlaces,
    references: unit.references,
    problems: unit.problems,
  };
}
