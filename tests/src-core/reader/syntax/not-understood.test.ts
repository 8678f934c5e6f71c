import { describe, expect, test } from "vitest";
import type { NotUnderstoodPart } from "./places.ts";
import { read, statements, trees } from "./read.ts";
import { tokenize } from "./tokenize.ts";

/** The texts of what was not understood. */
function spoilt(language: "c" | "c++", text: string): readonly string[] {
  const tokens = tokenize(text);
  const words = ({ first, end }: NotUnderstoodPart): string =>
    tokens
      .slice(first, end)
      .map((token) => token.text)
      .join(" ");
  return read(language, text).notUnderstood.map(words);
}

describe("an error spoils the statement it stands in and no other", () => {
  test.each([
    ["x = ; y = 2;", ["(not-understood)", "(= y 2)"]],
    ["foo(1, ; bar(2);", ["(not-understood)", "(call bar 2)"]],
    ["a; if (z = 3; w = 4; c = 1;", ["a", "(not-understood)", "(= w 4)", "(= c 1)"]],
    ["while (a) { b = ; c; } d;", ["(while a (block (not-understood) c))", "d"]],
    ["for (int i = 0; i <; i++) x; y;", ["(not-understood)", "y"]],
    ["a = b c; d;", ["(not-understood)", "d"]],
    ["int x = ; int y = 1;", ["(not-understood)", "(declare (y int = 1))"]],
    ["if (a) b = ; else c;", ["(if a (not-understood) c)"]],
    [
      "switch (x) { case 1: a = ; b; case 2: c; }",
      ["(switch x (block (case 1 (not-understood)) b (case 2 c)))"],
    ],
    ["x = y", ["(not-understood)"]],
    ["int x = 3", ["(not-understood)"]],
    ["a[1 = 2; b;", ["(not-understood)", "b"]],
  ])("%s", (text, expected) => {
    expect(statements("c", text).slice(0, expected.length)).toEqual(expected);
  });

  test("in a file", () => {
    expect(trees("c", "int x = ; int y = 3; void (; int z; void f(void) { }")).toEqual([
      "(not-understood)",
      "(declare (y int = 3))",
      "(not-understood)",
      "(declare (z int))",
      "(define f (function [void] void) (block))",
    ]);
  });

  test("in a class", () => {
    expect(trees("c++", "class C { int a; int = 3; void f() { x = ; } int b; };")).toEqual([
      "(type (class C (declare (a int)) (not-understood) (define f (function [] void) (block (not-understood))) (declare (b int))))",
    ]);
  });

  test("and is noted with its place", () => {
    expect(spoilt("c", "void f(void) { x = ; y = 2; }")).toEqual(["x = ;"]);
    expect(spoilt("c", "int a; int = 3; int b;")).toEqual(["int = 3 ;"]);
  });
});

describe("what the trees have no word for is noted, and the rest is read", () => {
  test.each([
    [
      "c++",
      "void f() { try { a(); } catch (...) { } b(); }",
      "(define f (function [] void) (block (not-understood) (call b)))",
    ],
    ["c++", "void f() { throw 1; }", "(define f (function [] void) (block (not-understood)))"],
    ["c++", "void f() { auto [a, b] = g(); c(); }", undefined],
    ["c++", "int x = a <=> b;", undefined],
    ["c", "int x = _Generic(a, int: 1, default: 2);", undefined],
    ["c", "int x = va_arg(list, int) + 1;", "(declare (x int = (+ (call va_arg list (not-understood)) 1)))"],
    ["c", "# pragma pack", undefined],
  ] as const)("%s: %s", (language, text, expected) => {
    const { notUnderstood, declarations } = read(language, text);
    expect(declarations.length).toBeGreaterThan(0);
    if (expected === undefined) expect(notUnderstood.length).toBeGreaterThan(0);
    else expect(trees(language, text)).toEqual([expected]);
  });

  test("unknown words before and behind a declaration are passed over", () => {
    expect(trees("c", "IRAM static void f(void) HOT { }")).toEqual([
      "(define f (function [void] static void) (block))",
    ]);
    expect(spoilt("c", "IRAM static void f(void) HOT { }")).toEqual(["IRAM", "HOT"]);
  });

  test.each([
    ["const char ROM t[] = {1};", "(declare (t (array ? const char) = (list 1)))"],
    ["ROM const char t[] = {1};", "(declare (t (array ? const char) = (list 1)))"],
    ["const ROM char t[] = {1};", "(declare (t (array ? const char) = (list 1)))"],
    ["const char t[] ROM = {1};", "(declare (t (array ? const char) = (list 1)))"],
    ["char t ROM = 1;", "(declare (t char = 1))"],
    ["char ROM t = 1;", "(declare (t char = 1))"],
    ["void f(int UNUSED a);", "(declare (f (function [a: int] void)))"],
  ])("an unknown macro in a declaration: %s", (text, expected) => {
    expect(trees("c", text)).toEqual([expected]);
    expect(spoilt("c", text)).toEqual([text.includes("ROM") ? "ROM" : "UNUSED"]);
  });

  test("pragmas in an operator say nothing to the tree, C11 6.10.9", () => {
    expect(trees("c", '_Pragma("pack(1)") int a;')).toEqual(["(declare (a int))"]);
  });
});
