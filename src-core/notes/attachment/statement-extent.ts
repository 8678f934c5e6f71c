import type { Token } from "../../reader/tokens.ts";

/**
 * Where statements and declarations begin and end, seen from their tokens alone: it works in code that does not
 * parse, in skipped groups and inside macro calls.
 */

const OPENING: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}" };
const CLOSING: ReadonlySet<string> = new Set([")", "]", "}"]);
/** Declarations that go on behind their closing brace, up to `;`. */
const TYPE_WORDS: ReadonlySet<string> = new Set(["struct", "class", "union", "enum", "typedef"]);

/** Index of the last token of the statement or declaration that starts at `first`; `first - 1` for none. */
export function lastTokenOf(tokens: readonly Token[], first: number): number {
  const isType = TYPE_WORDS.has(tokens[first]?.text ?? "");
  const isList = tokens[first + 1]?.text === "=" || tokens[first + 1]?.text === ",";
  let at = first;
  while (at < tokens.length) {
    const text = tokens[at]?.text ?? "";
    if (text === ";") return at;
    if (text === "," && isList) return at - 1;
    if (CLOSING.has(text)) return at - 1;
    const close = OPENING[text];
    if (close === undefined) {
      at++;
      continue;
    }
    at = matchingClose(tokens, at);
    if (close === "}" && !isType && endsBehind(tokens, first, at)) return at;
    at++;
  }
  return tokens.length - 1;
}

/** What may stand behind a `}` without being the start of something new. */
const GOES_ON: ReadonlySet<string> = new Set(["else", "catch", ";", ",", ")", "]", "{"]);

/** Whether the `}` at `close` ends what `first` began. */
function endsBehind(tokens: readonly Token[], first: number, close: number): boolean {
  const next = tokens[close + 1]?.text ?? "";
  if (next === "while") return tokens[first]?.text !== "do";
  return !GOES_ON.has(next);
}

/** Index of the first token of the statement or declaration that ends, or opens its body, at `last`. */
export function firstTokenOf(tokens: readonly Token[], last: number): number {
  let at = last;
  if (tokens[at]?.text === "}") at = matchingOpen(tokens, at) - 1;
  else if (tokens[at]?.text === ";" || tokens[at]?.text === "{" || tokens[at]?.text === ",") at--;
  while (at >= 0) {
    const text = tokens[at]?.text ?? "";
    if (text === ";" || text === "{" || text === ",") return at + 1;
    if (text === "}") {
      const open = matchingOpen(tokens, at);
      const isPart = tokens[open - 1]?.text === "=" || tokens[at + 1]?.text === "else";
      if (!isPart) return at + 1;
      at = open;
    } else if (CLOSING.has(text)) at = matchingOpen(tokens, at);
    else if (OPENING[text] !== undefined) return at + 1;
    at--;
  }
  return 0;
}

/** Index of the bracket that closes the one at `open`; the last token where none does. */
export function matchingClose(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at++) {
    const text = tokens[at]?.text ?? "";
    if (OPENING[text] !== undefined) depth++;
    else if (CLOSING.has(text) && --depth <= 0) return at;
  }
  return tokens.length - 1;
}

/** Index of the bracket that the one at `close` closes; 0 where there is none. */
function matchingOpen(tokens: readonly Token[], close: number): number {
  let depth = 0;
  for (let at = close; at >= 0; at--) {
    const text = tokens[at]?.text ?? "";
    if (CLOSING.has(text)) depth++;
    else if (OPENING[text] !== undefined && --depth <= 0) return at;
  }
  return 0;
}
