import { isStandIn, type MacroUse, moveTo, type Token, visibleSpan } from "../tokens.ts";
import type { Context, UnitState } from "./context.ts";
import { type FunctionSyntax, replaceBody } from "./functions.ts";
import { notUnderstood, onlyFunction, type Part, type PartBody, type TypedChunkInput } from "./parts.ts";
import type { DeclaredFunction } from "./symbols.ts";

/** What a chunk is beside the one that was typed in its place. */
type Change =
  | { readonly kind: "none" }
  /** The same text elsewhere. */
  | { readonly kind: "moved" }
  | { readonly kind: "body"; readonly body: PartBody; readonly syntax: FunctionSyntax };

/**
 * Makes the parts of a typed unit those of `chunks`, if places moved and bodies of functions changed but nothing else:
 * then everything that was typed stays, at its new place, and the changed bodies wait to be typed. Gives those; undefined,
 * and nothing is done, where more has changed.
 */
export function takeOtherBodies(
  unit: UnitState,
  parts: readonly Part[],
  chunks: readonly TypedChunkInput[],
): readonly PartBody[] | undefined {
  if (parts.length !== chunks.length) return undefined;
  const changes: Change[] = [];
  for (const [index, part] of parts.entries()) {
    const chunk = chunks[index];
    const change = chunk && changeOf(part, chunk);
    if (change === undefined) return undefined;
    changes.push(change);
  }
  return parts.flatMap((part, index) => {
    const [chunk, change] = [chunks[index], changes[index]];
    if (chunk === undefined || change === undefined || change.kind === "none") return [];
    if (change.kind === "moved") move(part, chunk, chunk.tokens.length);
    else replace(unit, part, chunk, change);
    part.given = chunk;
    return change.kind === "body" ? [change.body] : [];
  });
}

function changeOf({ given, body, passage }: Part, chunk: TypedChunkInput): Change | undefined {
  const isSame = chunk.syntax === given.syntax;
  if (isSame && chunk.tokens === given.tokens) return { kind: "none" };
  const [first] = passage.tokens;
  if (first !== undefined && isStandIn(visibleSpan(first).file)) return undefined;
  const { length } = chunk.tokens;
  if (isSame && passage.tokens.length === length && isLike(passage.tokens, chunk.tokens, length)) {
    return { kind: "moved" };
  }
  const syntax = onlyFunction(chunk.syntax);
  if (syntax === undefined || body === undefined || !mayBeReplaced(body)) return undefined;
  const { start } = body;
  return syntax.body.first === start && isLike(passage.tokens, chunk.tokens, start)
    ? { kind: "body", body, syntax }
    : undefined;
}

function mayBeReplaced({ isQuiet, defined }: PartBody): boolean {
  const { decidesTypes, definitions }: DeclaredFunction = defined.symbol;
  return isQuiet && !decidesTypes && definitions === 1;
}

/** Whether the first tokens are the same but for their places. */
function isLike(kept: readonly Token[], now: readonly Token[], count: number): boolean {
  for (let index = 0; index < count; index += 1) {
    const [one, other] = [kept[index], now[index]];
    if (one === other) continue;
    if (one === undefined || other === undefined) return false;
    if (one.text !== other.text || one.file !== other.file || !isByLikeMacros(one.macro, other.macro))
      return false;
  }
  return true;
}

function isByLikeMacros(one: MacroUse | undefined, other: MacroUse | undefined): boolean {
  let [a, b] = [one, other];
  while (a !== b) {
    if (a === undefined || b === undefined || a.name !== b.name || a.call.file !== b.call.file) return false;
    a = a.within;
    b = b.within;
  }
  return true;
}

function move({ passage }: Part, { tokens }: TypedChunkInput, count: number): void {
  for (let index = 0; index < count; index += 1) {
    const [kept, now] = [passage.tokens[index], tokens[index]];
    if (kept !== undefined && now !== undefined && kept !== now) moveTo(kept, now);
  }
}

function replace(
  unit: UnitState,
  part: Part,
  chunk: TypedChunkInput,
  { body, syntax }: Extract<Change, { kind: "body" }>,
): void {
  const { passage } = part;
  move(part, chunk, body.start);
  passage.tokens = [...passage.tokens.slice(0, body.start), ...chunk.tokens.slice(body.start)];
  passage.references = [...body.references];
  passage.problems = [...notUnderstood({ ...chunk, tokens: passage.tokens }), ...body.problems];
  passage.locals = [];
  const context: Context = { unit, passage, scope: unit.global, body: undefined };
  replaceBody(context, body.defined, syntax);
}
