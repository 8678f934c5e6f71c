import { describe, expect, test } from "vitest";
import { placedWithin } from "./places.ts";
import { type Language, read } from "./read.ts";
import { tokenize } from "./tokenize.ts";

const both: readonly Language[] = ["c", "c++"];
const times = (text: string, count: number): string => text.repeat(count);
const deep = 10_000;

/** Depth of the tree, found without recursion. */
function depthOf(root: unknown): number {
  let depth = 0;
  for (let level = placedWithin(root); level.length > 0; level = level.flatMap(placedWithin)) depth += 1;
  return depth;
}

describe("nesting beyond sense gives a note and a tree of bounded depth", () => {
  test.each([
    ["parentheses", `int x = ${times("(", deep)}1${times(")", deep)};`],
    ["brackets never closed", times("([{", deep)],
    ["brackets never opened", times(")]}", deep)],
    ["signs", `int x = ${times("- ", deep)}1;`],
    ["assignments", `void f(void) { ${times("a = ", deep)}1; }`],
    ["conditionals to the right", `int x = ${times("a ? b : ", deep)}1;`],
    ["conditionals in the middle", `int x = ${times("a ? ", deep)}1${times(" : 2", deep)};`],
    ["else if", `void f(void) { ${times("if (a) b; else ", deep)}c; }`],
    ["if in if", `void f(void) { ${times("if (a) ", deep)}c; }`],
    ["pointers", `int ${times("* ", deep)}x;`],
    ["arrays", `int x${times("[2]", deep)};`],
    ["functions", `int x${times("(int)", deep)};`],
    ["casts", `int x = ${times("(int) ", deep)}1;`],
    ["members", `int x = a${times(".b", deep)};`],
    ["calls", `int x = a${times("()", deep)};`],
    ["names", `int x = a${times("::a", deep)};`],
    ["template arguments", `${times("A<", deep)}int${times(">", deep)} x;`],
    ["comparisons", `int x = ${times("a < ", deep)}1;`],
    ["blocks", `void f(void) ${times("{", deep)}${times("}", deep)}`],
    ["records", times("struct s { ", deep)],
    ["templates", `${times("template <class T> ", deep)}int x;`],
    ["linkage", `${times('extern "C" ', deep)}int x;`],
    ["loops", `void f(void) { ${times("for (;;) ", deep)}; }`],
    ["do", `void f(void) { ${times("do ", deep)}; ${times("while (1); ", deep)} }`],
    ["lambdas", `auto x = ${times("[] { return ", deep)}1${times("; }", deep)};`],
  ])("%s", (_name, text) => {
    for (const language of both) {
      const syntax = read(language, text);
      expect(syntax.notUnderstood.length).toBeGreaterThan(0);
      expect(depthOf(syntax.declarations)).toBeLessThan(2_500);
    }
  });
});

describe("what is long but not deep is read", () => {
  test("a sum, a list, labels, statements", () => {
    for (const language of both) {
      expect(read(language, `int x = ${times("1 + ", 500)}1;`).notUnderstood).toEqual([]);
      expect(read(language, `int x[] = { ${times("1, ", deep)} };`).notUnderstood).toEqual([]);
      expect(read(language, `void f(void) { ${times("a * b; f(a); ", deep / 10)} }`).notUnderstood).toEqual(
        [],
      );
      expect(read(language, `void f(void) { ${times("if (a) b; else ", 150)}c; }`).notUnderstood).toEqual([]);
    }
  });
});

/** Numbers from 0 to `limit`, the same in every run (a linear congruential generator). */
function numbers(seed: number): (limit: number) => number {
  let state = seed;
  return (limit) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return (state >> 8) % limit;
  };
}

const vocabulary =
  "( ) [ ] { } ; , . -> * & && - + ++ < > << >> = == ? : :: ~ ! ... if else for while do switch case default return break goto struct class enum template typename int const static typedef unsigned void operator new delete sizeof this using namespace extern a b T 1 0 \"s\" 'c' asm auto @ #".split(
    " ",
  );

describe("random words", () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])("seed %i", (seed) => {
    const next = numbers(seed);
    const words = Array.from({ length: 200 + next(800) }, () => vocabulary[next(vocabulary.length)] ?? "");
    for (const text of [words.join(" "), `void f(void) { ${words.join(" ")} }`]) {
      const count = tokenize(text).length;
      for (const language of both) {
        for (const { first, end } of read(language, text).notUnderstood) {
          expect(first).toBeGreaterThanOrEqual(0);
          expect(end).toBeLessThanOrEqual(count);
          expect(end).toBeGreaterThanOrEqual(first);
        }
      }
    }
  });

  test("a chunk of two megabytes is passed over with a note", () => {
    const text = times("x + ; ", 350_000);
    for (const language of both) {
      const { declarations, notUnderstood } = read(language, text);
      expect(declarations.map(({ kind }) => kind)).toEqual(["not-understood"]);
      expect(notUnderstood.map(({ what }) => what)).toEqual(["This declaration is too long to be read."]);
    }
  });
});
