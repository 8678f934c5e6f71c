import { describe, expect, test } from "vitest";
import { ChunkCache } from "../../../../src-core/reader/chunks/chunk.ts";
import { splitChunks } from "../../../../src-core/reader/chunks/split-chunks.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { readText, spell } from "../preprocess/read.ts";

function split(text: string): readonly string[] {
  const { tokens } = readText(text, { language: "c++" });
  const chunks = splitChunks({ tokens, textOf: () => text, cache: new ChunkCache() });
  expect(chunks.flatMap((chunk) => chunk.tokens)).toEqual(tokens);
  return chunks.map((chunk) => spell(chunk.tokens));
}

describe("one chunk for each declaration at top level", () => {
  test.each<[string, readonly string[]]>([
    ["int a; int b = 2;", ["int a ;", "int b = 2 ;"]],
    ["void f() { g(); { h(); } } int a;", ["void f ( ) { g ( ) ; { h ( ) ; } }", "int a ;"]],
    ["struct S { int a; } s; int b;", ["struct S { int a ; } s ;", "int b ;"]],
    ["struct S f() { } int b;", ["struct S f ( ) { }", "int b ;"]],
    [
      "struct __attribute__((packed)) S { int a; }; int b;",
      ["struct __attribute__ ( ( packed ) ) S { int a ; } ;", "int b ;"],
    ],
    ["enum E { A, B }; enum class F : int { C };", ["enum E { A , B } ;", "enum class F : int { C } ;"]],
    ["typedef struct { int a; } T; int b;", ["typedef struct { int a ; } T ;", "int b ;"]],
    ["int a[] = { 1, 2 }; int b;", ["int a [ ] = { 1 , 2 } ;", "int b ;"]],
    ["int a{5}; int b;", ["int a { 5 } ;", "int b ;"]],
    ["auto f = [](int x) { return x; }; int b;", ["auto f = [ ] ( int x ) { return x ; } ;", "int b ;"]],
    [
      "class A : public B { void f() {} int x; }; int b;",
      ["class A : public B { void f ( ) { } int x ; } ;", "int b ;"],
    ],
    ["A::A() : x(1), y{2} { f(); } int b;", ["A :: A ( ) : x ( 1 ) , y { 2 } { f ( ) ; }", "int b ;"]],
    [
      "template <class T = int> void f(T t) { } int b;",
      ["template < class T = int > void f ( T t ) { }", "int b ;"],
    ],
    [
      "template <class T> struct S { T t; }; int b;",
      ["template < class T > struct S { T t ; } ;", "int b ;"],
    ],
    ["bool A::operator=(int x) { } int b;", ["bool A :: operator = ( int x ) { }", "int b ;"]],
    ["namespace n { int a; int f() { } } int b;", ["namespace n { int a ; int f ( ) { } }", "int b ;"]],
    ['extern "C" { int a; int f(); } int b;', ['extern "C" { int a ; int f ( ) ; }', "int b ;"]],
    ['extern "C" void f() { } int b;', ['extern "C" void f ( ) { }', "int b ;"]],
    [
      "int f() __attribute__((signal)); int f() { }",
      ["int f ( ) __attribute__ ( ( signal ) ) ;", "int f ( ) { }"],
    ],
    ["int (*table[2])(void) = { f, g }; int b;", ["int ( * table [ 2 ] ) ( void ) = { f , g } ;", "int b ;"]],
    [
      "void f() { int a[2] = { 1, 2 }; struct { int b; } c; } ;",
      ["void f ( ) { int a [ 2 ] = { 1 , 2 } ; struct { int b ; } c ; }", ";"],
    ],
    ["UNKNOWN(x) { y; } int b;", ["UNKNOWN ( x ) { y ; }", "int b ;"]],
    ["", []],
  ])("%s", (text, expected) => {
    expect(split(text)).toEqual(expected);
  });
});

describe("brackets that do not match", () => {
  test("an open brace ends where a declaration begins a line", () => {
    expect(split("void f() {\n  if (x) {\n}\nint a;\nvoid g() {\n  h();\n}\n")).toEqual([
      "void f ( ) { if ( x ) { }",
      "int a ;",
      "void g ( ) { h ( ) ; }",
    ]);
  });

  test("labels and access words at the beginning of a line begin no declaration", () => {
    expect(split("void f() {\n  {\nagain:\n  g();\n}\nint a;\n")).toEqual([
      "void f ( ) { { again : g ( ) ; }",
      "int a ;",
    ]);
    expect(split("class A {\npublic:\n  void f() {\n};\nint a;\n")).toEqual([
      "class A { public : void f ( ) { } ;",
      "int a ;",
    ]);
  });

  test("a macro at the beginning of a line counts where it is used", () => {
    const text = "#define ISR(v) void v()\nvoid f() {\n  {\n}\nISR(a) {\n}\n";
    expect(split(text)).toEqual(["void f ( ) { { }", "void a ( ) { }"]);
  });

  test("a brace too many is a chunk of its own", () => {
    expect(split("void f() { } } int a;")).toEqual(["void f ( ) { }", "}", "int a ;"]);
    expect(split("int a } int b;")).toEqual(["int a", "}", "int b ;"]);
  });

  test("open parentheses and brackets end with the statement or the brace", () => {
    expect(split("int f(int a; int b;")).toEqual(["int f ( int a ;", "int b ;"]);
    expect(split("void f() { g(1; a[2; } int b;")).toEqual(["void f ( ) { g ( 1 ; a [ 2 ; }", "int b ;"]);
    expect(split("int a ) ; int b ] ;")).toEqual(["int a ) ;", "int b ] ;"]);
  });

  test("a whole file of open braces is split in one pass", () => {
    const text = "void f() {\n".repeat(50_000);
    expect(split(text).length).toBe(50_000);
  });
});

test("a chunk whose tokens are the same objects is the same object", () => {
  const settings = {
    cache: new PreprocessCache(),
    prelude: ["core.h"],
    standIns: { "core.h": "int a; int b;" },
  };
  const cache = new ChunkCache();
  const first = splitChunks({ tokens: readText("int c;", settings).tokens, textOf: () => "int c;", cache });
  const second = splitChunks({ tokens: readText("int d;", settings).tokens, textOf: () => "int d;", cache });
  expect(second[0]).toBe(first[0]);
  expect(second[1]).toBe(first[1]);
  expect(second[2]).not.toBe(first[2]);
});
