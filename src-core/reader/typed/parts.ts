import type { ChunkSyntax } from "../syntax/nodes.ts";
import type { Token } from "../tokens.ts";
import { atIn, type Context, type Passage, type ProblemAt, passageOf, type UnitState } from "./context.ts";
import { declare } from "./declarations.ts";
import { type DefinedFunction, defineFunction, type FunctionSyntax } from "./functions.ts";
import type { Reference } from "./nodes.ts";
import { isDeduced } from "./specifiers.ts";

/** A run of declarations with the tokens its places refer to. */
export interface TypedChunkInput {
  readonly tokens: readonly Token[];
  readonly syntax: ChunkSyntax;
}

/** One chunk as it was typed. */
export interface Part {
  /** As it was handed in last. */
  given: TypedChunkInput;
  readonly passage: Passage;
  /** Of a chunk that is one function, whose body may be put in the place of another. */
  readonly body: PartBody | undefined;
}

export interface PartBody {
  readonly defined: DefinedFunction;
  /** Index of the body's first token. */
  readonly start: number;
  /** What the header alone gathered. */
  readonly references: readonly Reference[];
  readonly problems: readonly ProblemAt[];
  /** Typing the body added nothing to the unit but what the passage holds. */
  isQuiet: boolean;
}

/** Declares what a chunk declares. Bodies wait until they are asked for. */
export function typePart(unit: UnitState, given: TypedChunkInput): Part {
  const passage = passageOf(given.tokens);
  const context: Context = { unit, passage, scope: unit.global, body: undefined };
  passage.problems.push(...notUnderstood(given));
  const syntax = onlyFunction(given.syntax);
  if (syntax === undefined) {
    for (const declaration of given.syntax.declarations) declare(context, declaration);
    return { given, passage, body: undefined };
  }
  const before = passage.problems.length;
  const defined = defineFunction(context, syntax);
  return { given, passage, body: defined && partBody(defined, syntax, passage, before) };
}

/** The function that a chunk consists of; undefined where it is anything else. */
export function onlyFunction({ declarations }: ChunkSyntax): FunctionSyntax | undefined {
  const [only] = declarations;
  return declarations.length === 1 && only?.kind === "function" ? only : undefined;
}

/** What the tree of a chunk says of itself. */
export function notUnderstood({ tokens, syntax }: TypedChunkInput): readonly ProblemAt[] {
  return syntax.notUnderstood.map((part) => ({
    at: atIn(tokens, { first: part.first, end: Math.max(part.first + 1, part.end) }),
    message: part.what,
  }));
}

/** Return types that are deduced, and default arguments, are typed later, from what stands in the body or before it. */
function partBody(
  defined: DefinedFunction,
  syntax: FunctionSyntax,
  { references, problems }: Passage,
  ownProblems: number,
): PartBody | undefined {
  const { symbol } = defined;
  if (isDeduced(symbol.type.returns) || symbol.defaults.some((value) => value !== undefined))
    return undefined;
  return {
    defined,
    start: syntax.body.first,
    references: [...references],
    problems: problems.slice(ownProblems),
    isQuiet: false,
  };
}
