import { isStandIn, visibleRange } from "../tokens.ts";
import { makeUnitState, type ProblemAt, type UnitSetting, type UnitState } from "./context.ts";
import type { FunctionSymbol, TypedUnit, Variable } from "./nodes.ts";
import { takeOtherBodies } from "./other-bodies.ts";
import { type Part, type PartBody, type TypedChunkInput, typePart } from "./parts.ts";
import { DeclaredFunction } from "./symbols.ts";

export interface TypeUnitInput extends UnitSetting {
  /** The main files, in reading order. */
  readonly mains: readonly string[];
  /** Chunks in the order in which they stand in the unit, stand-in headers first. */
  readonly chunks: readonly TypedChunkInput[];
}

/** A typed unit, and what typing it again after a change of its text takes over. */
export interface Typing {
  readonly typed: TypedUnit;
  readonly state: UnitState;
  readonly parts: readonly Part[];
}

/**
 * Types a translation unit: resolves every name, gives every expression its type on the target and writes
 * implicit conversions out. Bodies of functions see everything declared in the unit, so that a sketch needs no
 * prototypes. Never throws: what is not understood is `unresolved`, `not-understood` or a problem.
 *
 * `before` is how a former text of the unit was typed, in the same setting. Where nothing but bodies of functions changed,
 * its symbols and trees become those of this text, their tokens moved, and it must not be used any more.
 */
export function typeUnit(input: TypeUnitInput, before?: Typing): Typing {
  return (before && typeOtherBodies(input, before)) ?? typeAnew(input);
}

function typeAnew(input: TypeUnitInput): Typing {
  const state = makeUnitState(input);
  const parts = input.chunks.map((chunk) => typePart(state, chunk));
  const bodies = new Map(
    parts.flatMap(({ body }) => (body === undefined ? [] : [[body.defined.symbol, body]])),
  );
  return { typed: finish(input, state, parts, bodies), state, parts };
}

function typeOtherBodies(input: TypeUnitInput, { state, parts }: Typing): Typing | undefined {
  const bodies = takeOtherBodies(state, parts, input.chunks);
  if (bodies === undefined) return undefined;
  const typed = finish(input, state, parts, new Map(bodies.map((body) => [body.defined.symbol, body])));
  return bodies.every(({ isQuiet }) => isQuiet) ? { typed, state, parts } : undefined;
}

/** Reads what waited until asked for, of the author's own functions and variables; then nothing changes. */
function finish(
  input: TypeUnitInput,
  unit: UnitState,
  parts: readonly Part[],
  bodies: ReadonlyMap<FunctionSymbol, PartBody>,
): TypedUnit {
  const functions: FunctionSymbol[] = [];
  const variables: Variable[] = [];
  unit.phase.isTyping = true;
  for (const symbol of unit.symbols) {
    if (symbol instanceof DeclaredFunction) {
      functions.push(symbol);
      if (symbol.standIn) continue;
      const before = extentOf(unit);
      symbol.typedBody();
      const body = bodies.get(symbol);
      if (body !== undefined) body.isQuiet = extentOf(unit) === before;
    } else if (symbol.kind === "variable") {
      variables.push(symbol);
      if (!isStandIn(symbol.at.first.file)) void symbol.initializer;
    }
  }
  unit.phase.isTyping = false;
  return {
    lasting: unit,
    mains: input.mains,
    language: input.language,
    model: input.model,
    symbols: [...unit.symbols],
    functions,
    variables,
    locals: parts.flatMap(({ passage }) => passage.locals),
    classes: unit.classes,
    fieldPlaces: unit.fieldPlaces,
    references: parts.flatMap(({ passage }) => passage.references),
    problems: parts.flatMap(({ passage }) => passage.problems.map(problemOf)),
  };
}

function problemOf({ at, message }: ProblemAt): TypedUnit["problems"][number] {
  return { span: visibleRange(at.first, at.last), message };
}

/** A number that grows with whatever is added to a unit that outlives a body. */
function extentOf(unit: UnitState): number {
  return (
    unit.symbols.size +
    unit.classes.size +
    unit.closures.size +
    unit.typeNumbers.size +
    unit.instances.size +
    unit.enumerators.size +
    unit.fieldPlaces.size +
    unit.declaredAgain
  );
}
