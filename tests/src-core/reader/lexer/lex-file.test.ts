import { describe, expect, test } from "vitest";
import { lexFile } from "../../../../src-core/reader/lexer/lex-file.ts";
import type { LexedFile } from "../../../../src-core/reader/lexer/lexed-file.ts";
import { LexerCache } from "../../../../src-core/reader/lexer/lexer-cache.ts";
import type { Language } from "../../../../src-core/reader/lexer/scanner.ts";

/* C11 6.4, C++20 [lex]; what else general-purpose compilers take is named where it is tested. */

function lex(text: string, language: Language = "c"): LexedFile {
  return lexFile("a.c", text, language);
}

/** Kinds by their first letter, and spellings. */
function tokens(text: string, language: Language = "c"): readonly string[] {
  return lex(text, language).pieces.flatMap((piece) =>
    piece.tokens.map((token) => `${token.kind.slice(0, 2)} ${token.text}`),
  );
}

function messages(text: string): readonly string[] {
  return lex(text).pieces.flatMap((piece) => piece.problems.map(({ message }) => message));
}

describe("tokens", () => {
  test.each<[string, readonly string[]]>([
    ["a _b C9 $d", ["id a", "id _b", "id C9", "id $d"]],
    ["größe 名前", ["id größe", "id 名前"]],
    ["\\u00e9t\\u00e9", ["id \\u00e9t\\u00e9"]],
    [
      "1 0x1F 1.5e+3 .5 1e-5f 0b11 12ab 1.2.3",
      ["nu 1", "nu 0x1F", "nu 1.5e+3", "nu .5", "nu 1e-5f", "nu 0b11", "nu 12ab", "nu 1.2.3"],
    ],
    ["0xE+1 0x1p-3 1-2", ["nu 0xE+1", "nu 0x1p-3", "nu 1", "pu -", "nu 2"]],
    ["'a' '\\'' L'x' u8'y'", ["ch 'a'", "ch '\\''", "ch L'x'", "ch u8'y'"]],
    [
      '"a" "\\"" L"x" u8"y" "a//b" "/*"',
      ['st "a"', 'st "\\""', 'st L"x"', 'st u8"y"', 'st "a//b"', 'st "/*"'],
    ],
    [
      "<<= >>= ... -> ++ -- << && || ## %:%: <: :>",
      [
        "pu <<=",
        "pu >>=",
        "pu ...",
        "pu ->",
        "pu ++",
        "pu --",
        "pu <<",
        "pu &&",
        "pu ||",
        "pu ##",
        "pu %:%:",
        "pu <:",
        "pu :>",
      ],
    ],
    ["a+++b", ["id a", "pu ++", "pu +", "id b"]],
    ["` \\", ["ot `", "ot \\"]],
    ["x\u00a0y", ["id x", "ot \u00a0", "id y"]],
  ])("%j", (text, expected) => {
    expect(tokens(text)).toEqual(expected);
  });

  test("raw strings", () => {
    expect(tokens('R"(a "b" \\n\nc)" R"x()")x" LR"()" x')).toEqual([
      'st R"(a "b" \\n\nc)"',
      'st R"x()")x"',
      'st LR"()"',
      "id x",
    ]);
  });

  test("digit separators and suffixes of one's own are those of C++", () => {
    expect(tokens("1'000'000 5_ms", "c++")).toEqual(["nu 1'000'000", "nu 5_ms"]);
    expect(tokens("1'0'", "c")).toEqual(["nu 1", "ch '0'"]);
    expect(tokens('"a"_s', "c++")).toEqual(['st "a"_s']);
    expect(tokens('"a"_s', "c")).toEqual(['st "a"', "id _s"]);
    expect(tokens('"a"PRId8', "c++")).toEqual(['st "a"', "id PRId8"]);
  });

  test("<:: in C++ is < and :: (C++20 [lex.pptoken], 3.2)", () => {
    expect(tokens("a<::b>", "c++")).toEqual(["id a", "pu <", "pu ::", "id b", "pu >"]);
    expect(tokens("a<:::b", "c++")).toEqual(["id a", "pu <:", "pu ::", "id b"]);
  });

  test("offsets and white space", () => {
    const [piece] = lex("ab  +c\n d").pieces;
    expect(piece?.tokens.map(({ start, end, space }) => [start, end, space])).toEqual([
      [0, 2, false],
      [4, 5, true],
      [5, 6, false],
      [8, 9, true],
    ]);
  });

  test("a byte order mark is no token", () => {
    expect(tokens("\ufeffint")).toEqual(["id int"]);
  });
});

describe("line splices", () => {
  test.each<[string, readonly string[]]>([
    ["a\\\nb", ["id ab"]],
    ["a\\\r\nb", ["id ab"]],
    ["a \\\n b", ["id a", "id b"]],
    ["1\\\n2\\\n.5", ["nu 12.5"]],
    ["+\\\n+", ["pu ++"]],
    ["<\\\n<\\\n=", ["pu <<="]],
    ['"a\\\nb"', ['st "ab"']],
    ["'\\\na'", ["ch 'a'"]],
    ["a\\ \nb", ["id ab"]],
    ["a;\\\nb", ["id a", "pu ;", "id b"]],
    ["a/\\\n/ b\\\nc\nd", ["id a", "id d"]],
    ["a/\\\n* b *\\\n/c", ["id a", "id c"]],
  ])("%j", (text, expected) => {
    expect(tokens(text)).toEqual(expected);
  });

  test("a token over a splice ends where its last character ends", () => {
    const [piece] = lex("ab\\\ncd ef").pieces;
    expect(piece?.tokens.map(({ start, end }) => [start, end])).toEqual([
      [0, 6],
      [7, 9],
    ]);
  });

  test("a very long token over many splices", () => {
    const text = "a\\\n".repeat(20_000);
    expect(tokens(text)).toEqual([`id ${"a".repeat(20_000)}`]);
    expect(tokens(";\\\n".repeat(20_000)).length).toBe(20_000);
  });
});

describe("comments", () => {
  test("are collected with their markers and places", () => {
    const text = "a // one\n/* two\n */ b /**/ c //";
    const { comments } = lex(text);
    expect(comments.map((comment) => comment.text)).toEqual(["// one", "/* two\n */", "/**/", "//"]);
    for (const { start, end, text: comment } of comments) expect(text.slice(start, end)).toBe(comment);
    expect(tokens(text)).toEqual(["id a", "id b", "id c"]);
  });

  test("stand in skipped groups as well", () => {
    expect(lex("#if 0\n// @wire\n#endif").comments.length).toBe(1);
  });

  test("go on over a splice, and end before a carriage return", () => {
    expect(lex("// a \\\n b\nc").comments.map(({ text }) => text)).toEqual(["// a \\\n b"]);
    expect(lex("// a\r\nc").comments.map(({ text }) => text)).toEqual(["// a"]);
  });

  test("are none inside strings", () => {
    expect(lex("\"/* a */\" '//'").comments).toEqual([]);
  });
});

describe("directives", () => {
  test("end with their line, which comments and splices lengthen", () => {
    const { pieces } = lex("a\n # define /* x\n y */ A \\\n 1\nb");
    expect(pieces.map((piece) => piece.kind)).toEqual(["text", "directive", "text"]);
    expect(pieces[1]?.tokens.map(({ text }) => text)).toEqual(["A", "1"]);
  });

  test("begin a line, behind comments at most", () => {
    expect(lex("/* c */ #define A").pieces.map((piece) => piece.kind)).toEqual(["directive"]);
    expect(lex("a #define A").pieces.map((piece) => piece.kind)).toEqual(["text"]);
    expect(lex("%:define A").pieces.map((piece) => piece.kind)).toEqual(["directive"]);
  });

  test("a header name is one token behind #include and nowhere else", () => {
    expect(lex("#include <a//b.h> // c").pieces[0]?.tokens.map(({ text }) => text)).toEqual(["<a//b.h>"]);
    expect(lex("#if A <b> c").pieces[0]?.tokens.length).toBe(5);
  });

  test("conditionals know where their next branch is", () => {
    const { pieces } = lex("#if A\na\n#elif B\n#if C\n#endif\n#else\n#endif\nz");
    const next = pieces.map((piece) => (piece.kind === "directive" ? piece.next : undefined));
    expect(next).toEqual([2, undefined, 5, 4, 8, 6, 8, undefined]);
  });

  test.each([
    ["#ifndef A_H\n#define A_H\nx\n#endif\n// end", "A_H"],
    ["/* c */\n#if !defined(A_H)\nx\n#endif", "A_H"],
    ["#if !defined A_H\nx\n#endif", "A_H"],
    ["#ifndef A_H\nx\n#endif\ny", undefined],
    ["y\n#ifndef A_H\nx\n#endif", undefined],
    ["#ifndef A_H\nx\n#else\ny\n#endif", undefined],
    ["#ifdef A_H\nx\n#endif", undefined],
  ])("the guard of %j", (text, guard) => {
    expect(lex(text).guard).toBe(guard);
  });
});

describe("what is wrong is said, and reading goes on", () => {
  test.each<[string, string, readonly string[]]>([
    ['"a\nb', 'No closing " on this line.', ['ot "a', "id b"]],
    ["'a\nb", "No closing ' on this line.", ["ot 'a", "id b"]],
    ["/* a\nb", "The comment is not closed; */ has to end it.", []],
    ['R"x(a\nb', 'The raw string is not closed; )x" has to end it.', ['ot R"x(a\nb']],
    [
      "a \ufffd b",
      "Bytes that are not UTF-8 stand here; save the file as UTF-8.",
      ["id a", "ot \ufffd", "id b"],
    ],
  ])("%j", (text, message, expected) => {
    expect(messages(text)).toEqual([message]);
    expect(tokens(text)).toEqual(expected);
  });
});

test("a cache lexes a text once for each language", () => {
  const cache = new LexerCache();
  const first = cache.lex("a.c", "int x;", "c");
  expect(cache.lex("a.c", "int x;", "c")).toBe(first);
  expect(cache.lex("a.c", "int x;", "c++")).not.toBe(first);
  expect(cache.lex("a.c", "int y;", "c")).not.toBe(first);
  expect(cache.comments("a.c", "// c", "c").map(({ text }) => text)).toEqual(["// c"]);
});
