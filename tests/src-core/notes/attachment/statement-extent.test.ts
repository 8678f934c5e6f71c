import { describe, expect, it } from "vitest";
import { fileCode } from "../../../../src-core/notes/attachment/file-code.ts";
import { firstTokenOf, lastTokenOf } from "../../../../src-core/notes/attachment/statement-extent.ts";
import { lexFile } from "../../../../src-core/reader/lexer/lex-file.ts";

function tokensOf(text: string) {
  return fileCode(lexFile("a.cpp", text, "c++")).tokens;
}

/** `[` marks the start; the statement or declaration found is everything up to `]`. */
const FORWARD: readonly string[] = [
  "[a = b + c;] d;",
  "[while (!(PIND & 4)) ;] next();",
  "[while (x) { y(); }] next();",
  "[do { y(); } while (x);] next();",
  "[if (x) { y(); } else { z(); }] next();",
  "[if (x) y(); ]else z();",
  "[for (int i = 0; i < 3; i++) { f(i); }] g();",
  "[uint8_t t[] = { 1, 2 };] int u;",
  "[uint8_t t{1}, u{2};] int v;",
  "[void f(void) { g(); }] void h(void);",
  "[void f(void);] void h(void);",
  "[struct s { int a; };] int b;",
  "[struct { int a; } point;] int b;",
  "[enum { A, B };] int b;",
  "[Ferry::Ferry() : x{1}, y{2} { go(); }] int b;",
  "enum { [A = 1], B };",
  "enum { [A], B };",
  "enum { A, [B] };",
  "{ [x = 1] }",
  "[try { f(); } catch (...) { g(); }] h();",
  "[f(]",
  "[switch (x) { case 1: break; }] g();",
];

describe("where a statement ends", () => {
  it.each(FORWARD)("%s", (marked) => {
    const start = marked.indexOf("[");
    const end = findClosingMark(marked) - 1;
    const text = marked.slice(0, start) + marked.slice(start + 1, end + 1) + marked.slice(end + 2);
    const tokens = tokensOf(text);
    const last =
      tokens[
        lastTokenOf(
          tokens,
          tokens.findIndex((token) => token.start >= start),
        )
      ];
    expect(text.slice(start, last?.end)).toBe(text.slice(start, end).trimEnd());
  });
});

/** The `]` that closes the mark: the one at which square brackets balance, or the last. */
function findClosingMark(marked: string): number {
  let depth = 0;
  for (let at = marked.indexOf("["); at < marked.length; at++) {
    if (marked[at] === "[") depth++;
    else if (marked[at] === "]" && --depth === 0) return at;
  }
  return marked.length - 1;
}

/** What precedes `|` ends there; the statement found is everything from `^`. */
const BACKWARD: readonly string[] = [
  "a(); ^b = c;| d();",
  "{ ^b = c;| }",
  "a(); ^while (x) { y(); }| z();",
  "a(); ^if (x) { y(); } else { z(); }|",
  "^void f(void) {| g(); }",
  "int a; ^uint8_t t[] = { 1, 2 };|",
  "enum { ^A = 1,| B }",
  "enum { A, ^B| }",
  "{ a(); } ^b();|",
  "^b;|",
];

describe("where a statement begins", () => {
  it.each(BACKWARD)("%s", (marked) => {
    const start = marked.indexOf("^");
    const end = marked.indexOf("|") - 1;
    const text = marked.replace("^", "").replace("|", "");
    const tokens = tokensOf(text);
    const last = tokens.findLastIndex((token) => token.end <= end);
    expect(tokens[firstTokenOf(tokens, last)]?.start).toBe(start);
  });
});
