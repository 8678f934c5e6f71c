import { describe, expect, test } from "vitest";
import type { Grammar } from "../../../../src-core/reader/syntax/grammar/grammar.ts";
import { parseUnit } from "../../../../src-core/reader/syntax/parse-unit.ts";
import { SyntaxCache } from "../../../../src-core/reader/syntax/syntax-cache.ts";
import { loadGrammar } from "./load-grammar.ts";
import { printDeclaration } from "./print.ts";
import { tokenize } from "./tokenize.ts";

const loaded = await loadGrammar();

/** Reads units over one cache and counts how often the grammar is asked. */
class Reader {
  parses = 0;
  private readonly cache: SyntaxCache;
  private readonly grammar: Grammar;

  constructor(limit?: number) {
    this.cache = new SyntaxCache(limit);
    this.grammar = {
      parse: (text, offsets) => {
        this.parses += 1;
        return loaded.parse(text, offsets);
      },
    };
  }

  /** One chunk per text. */
  read(language: "c" | "c++", ...texts: readonly string[]): readonly string[] {
    const chunks = texts.map((text) => ({ tokens: tokenize(text) }));
    return parseUnit(chunks, language, this.grammar, this.cache).flatMap(({ syntax }) =>
      syntax.declarations.map(printDeclaration),
    );
  }
}

describe("only what changed is parsed again", () => {
  test("an unchanged unit asks nothing of the grammar and gives the same trees", () => {
    const reader = new Reader();
    const texts = ["int a;", "void f(void) { a = 1; }", "typedef int T;"];
    const first = reader.read("c", ...texts);
    expect(reader.parses).toBe(3);
    expect(reader.read("c", ...texts)).toEqual(first);
    expect(reader.parses).toBe(3);
  });

  test("an edit inside a function parses that function", () => {
    const reader = new Reader();
    reader.read("c", "int a;", "void f(void) { a = 1; }", "void g(void) { a = 2; }");
    expect(reader.read("c", "int a;", "void f(void) { a = 12; }", "void g(void) { a = 2; }")[1]).toBe(
      "(define f (function [void] void) (block (= a 12)))",
    );
    expect(reader.parses).toBe(4);
  });

  test("white space does not count", () => {
    const reader = new Reader();
    reader.read("c", "int a = 1 ;");
    reader.read("c", "int\n  a=1;");
    expect(reader.parses).toBe(1);
  });

  test("the same text in another language is another tree", () => {
    const reader = new Reader();
    expect(reader.read("c", "struct S { int x; }; int y = (S) - 1;")[1]).toBe("(declare (y int = (- S 1)))");
    expect(reader.read("c++", "struct S { int x; }; int y = (S) - 1;")[1]).toBe(
      "(declare (y int = (cast S (-_ 1))))",
    );
  });
});

describe("a tree depends on what the names in it meant", () => {
  const use = "int f(int b) { return (T) - b; }";

  test("a name that becomes a type before it changes its tree, and back", () => {
    const reader = new Reader();
    const asType = "(define f (function [b: int] int) (block (return (cast T (-_ b)))))";
    const asValue = "(define f (function [b: int] int) (block (return (- T b))))";
    expect(reader.read("c", "typedef int T;", use)[1]).toBe(asType);
    expect(reader.read("c", "int T;", use)[1]).toBe(asValue);
    expect(reader.read("c", "typedef int T;", use)[1]).toBe(asType);
    // Both readings are kept.
    expect(reader.parses).toBe(4);
  });

  test("other names do not", () => {
    const reader = new Reader();
    reader.read("c", "typedef int T;", use);
    reader.read("c", "typedef int T;", "typedef int U;", use);
    expect(reader.parses).toBe(3);
  });

  test("members and base classes count", () => {
    const reader = new Reader();
    const define = "void D::f() { (I) - 1; }";
    const derived = "struct D : B { void f(); };";
    expect(reader.read("c++", "struct B { typedef int I; };", derived, define)[2]).toContain(
      "(cast I (-_ 1))",
    );
    expect(reader.read("c++", "struct B { static int I; };", derived, define)[2]).toContain("(- I 1)");
    expect(
      reader.read("c++", "struct B { typedef int I; };", "struct D { void f(); };", define)[2],
    ).toContain("(- I 1)");
  });

  test("what a chunk from the cache declares still holds for those behind it", () => {
    const reader = new Reader();
    reader.read("c", "typedef int T;");
    expect(reader.read("c", "typedef int T;", use)[1]).toContain("(cast T (-_ b))");
    expect(reader.parses).toBe(2);
  });
});

test("the cache forgets what was used longest ago", () => {
  const reader = new Reader(2);
  reader.read("c", "int a;");
  reader.read("c", "int b;");
  reader.read("c", "int a;");
  reader.read("c", "int c;");
  expect(reader.parses).toBe(3);
  reader.read("c", "int a;");
  expect(reader.parses).toBe(3);
  reader.read("c", "int b;");
  expect(reader.parses).toBe(4);
});
