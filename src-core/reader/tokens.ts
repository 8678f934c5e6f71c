import type { NotUnderstood, Span } from "../finding.ts";

export type TokenKind = "identifier" | "number" | "character" | "string" | "punctuator" | "other";

/** One use of a macro, and the use whose expansion it came out of. */
export interface MacroUse {
  readonly name: string;
  /** The call in a file: the name, or the name with its argument list. */
  readonly call: Span;
  /** The name in its `#define`; undefined for a macro given from outside (settings, chip). */
  readonly definition: Span | undefined;
  /** The use whose expansion held this call; undefined where the call stands in a file itself. */
  readonly within: MacroUse | undefined;
}

/**
 * A preprocessing token after expansion. As a `Span` it says where its characters stand: in the file itself,
 * or in the body of a macro, in which case `macro` is the innermost use that brought it here. A token made by
 * `#`, `##` or a built-in macro has the span of the operator or call that made it.
 */
export interface Token extends Span {
  readonly kind: TokenKind;
  readonly text: string;
  /** White space stood before it. */
  readonly space: boolean;
  readonly macro: MacroUse | undefined;
}

/** Puts a token that is kept where its like stands after a change of the text. */
export function moveTo(kept: Token, like: Token): void {
  const token = kept as { -readonly [Key in keyof Token]: Token[Key] };
  token.file = like.file;
  token.start = like.start;
  token.end = like.end;
  token.space = like.space;
  token.macro = like.macro;
}

/** Whether a span's file is a built-in stand-in header, which has the header's name in angle brackets. */
export function isStandIn(file: string): boolean {
  return file.startsWith("<");
}

/** The macro call in a file itself that led to this use. */
export function outermostUse(use: MacroUse): MacroUse {
  let outermost = use;
  while (outermost.within !== undefined) outermost = outermost.within;
  return outermost;
}

/** Where a reader of the source sees this token: its own place, or else the outermost macro call. */
export function visibleSpan(token: Token): Span {
  if (token.macro === undefined) return token;
  const { call } = outermostUse(token.macro);
  const isArgument = token.file === call.file && token.start >= call.start && token.end <= call.end;
  return isArgument ? token : call;
}

/** The visible span from `first` to `last`; where they lie in different files, that of `first` alone. */
export function visibleRange(first: Token, last: Token): Span {
  const from = visibleSpan(first);
  const to = visibleSpan(last);
  if (from.file !== to.file || to.end < from.start) return from;
  return { file: from.file, start: Math.min(from.start, to.start), end: Math.max(from.end, to.end) };
}

/** The innermost use of a macro whose expansion holds all from `first` to `last`; undefined for what a file or an argument holds. */
export function useAround(first: Token, last: Token): MacroUse | undefined {
  if (visibleSpan(first) === first && visibleSpan(last) === last) return undefined;
  const around = new Set<MacroUse>();
  for (let use = last.macro; use !== undefined; use = use.within) around.add(use);
  let use = first.macro;
  while (use !== undefined && !around.has(use)) use = use.within;
  return use;
}

/** A comment with its markers, for wire notes. */
export interface Comment extends Span {
  readonly text: string;
}

export interface MacroDefinition {
  readonly name: string;
  /** The name in its `#define`; undefined for one given from outside. */
  readonly definition: Span | undefined;
  /** Undefined for an object macro. A variadic one ends in `...`. */
  readonly parameters: readonly string[] | undefined;
  readonly body: readonly Token[];
}

/** One `#include` that found no file and no stand-in. */
export interface MissingInclude {
  readonly span: Span;
  readonly name: string;
}

/** What preprocessing one translation unit gives. */
export interface Preprocessed {
  /** Expanded tokens of the unit in order, stand-in headers included, without comments and directives. */
  readonly tokens: readonly Token[];
  /** Workspace files read, in order of first inclusion, the main files first. */
  readonly files: readonly string[];
  /** Macros that stand at the end of the unit. */
  readonly macros: ReadonlyMap<string, MacroDefinition>;
  /** Every `#define` of a workspace file met on the way, redefinitions and undefined ones included. */
  readonly definitions: readonly MacroDefinition[];
  /** Every macro use written in a workspace file itself (not inside another expansion). */
  readonly uses: readonly MacroUse[];
  readonly missing: readonly MissingInclude[];
  readonly problems: readonly NotUnderstood[];
}
