import { describe, expect, test } from "vitest";
import { expand, readFiles, readText, spell } from "./read.ts";

/* C11 6.10.1: integers of 64 bits, signed or not; the usual arithmetic conversions of C11 6.3.1.8. */

function holds(condition: string, defines: Readonly<Record<string, string>> = {}): boolean | string {
  const { tokens, problems } = readText(`#if ${condition}\nyes\n#else\nno\n#endif`, { defines });
  return problems[0]?.message ?? spell(tokens) === "yes";
}

describe("conditions that hold", () => {
  test.each([
    "1 + 2 * 3 == 7",
    "(1 + 2) * 3 == 9",
    "-7 / 2 == -3",
    "-7 % 2 == -1",
    "1 << 3 | 1",
    "-1 > 0u",
    "(0 ? 0u : -1) > 0",
    "0xFFFFFFFFFFFFFFFF == -1",
    "18446744073709551615u + 1 == 0",
    "-1 >> 1 == -1",
    "~0u == 18446744073709551615u",
    "2 || 1 / 0",
    "!(0 && 1 / 0)",
    "1 ? 2 : 1 / 0",
    "unknown == 0",
    "'a' == 97 && '\\n' == 10 && '\\x41' == 'A' && '\\101' == 'A'",
    "'\\377' < 0",
    "L'a' == 97",
    "0b101 == 5 && 010 == 8 && 0x10 == 16",
    "10ULL == 10 && 10lu == 10",
    "defined A && defined(A) && !defined B",
    "A == 3",
  ])("%s", (condition) => {
    expect(holds(condition, { A: "3" })).toBe(true);
  });
});

describe("what a character is depends on the compiler's macros", () => {
  test("plain char without a sign", () => {
    expect(holds("'\\377' == 255", { __CHAR_UNSIGNED__: "1" })).toBe(true);
  });

  test("a constant of several characters has the width of int", () => {
    expect(holds("'abc' == 25187", { __SIZEOF_INT__: "2" })).toBe(true);
    expect(holds("'abc' == 6382179", { __SIZEOF_INT__: "4" })).toBe(true);
  });
});

describe("conditions that cannot be read are false and said", () => {
  test.each([
    ["", "#if has no condition."],
    ["1 +", "The #if condition ends where a value is expected."],
    ["1 / 0", "Division by zero in this #if."],
    ["5 % (2 - 2)", "Division by zero in this #if."],
    ["(1", 'A ")" is missing in this #if condition.'],
    ["1 2", '"2" does not belong here in an #if condition.'],
    ["1 ? 2", 'A ":" is missing behind "?" in this #if condition.'],
    ["1.5 > 1", "1.5 is no integer; #if knows only integers."],
    ["1e3", "1e3 is no integer; #if knows only integers."],
    ["12ab", "12ab is not an integer constant."],
    ["09", "09 is not an integer constant."],
    ["99999999999999999999", "99999999999999999999 does not fit into 64 bits."],
    ['"text"', '"\\"text\\"" cannot stand in an #if condition.'.replaceAll('\\"', '"')],
    ["x = 1", '"=" does not belong here in an #if condition.'],
    ["f(1)", "f is no macro with parameters here."],
    ["defined", '"defined" needs the name of a macro.'],
    ["defined(A", 'A ")" is missing behind "defined".'],
    ["__has_include", "__has_include needs a header name in parentheses."],
    ["''", "'' is not a character constant."],
  ])("#if %s", (condition, message) => {
    expect(holds(condition)).toBe(message);
  });

  test("parentheses nested a thousand deep", () => {
    expect(holds(`${"(".repeat(1000)}1${")".repeat(1000)}`)).toBe("This #if condition nests too deep.");
    expect(holds(`${"!".repeat(5000)}1`)).toBe("This #if condition nests too deep.");
  });
});

describe("groups", () => {
  test.each([
    ["#if 0\na\n#elif 1\nb\n#else\nc\n#endif", "b"],
    ["#ifdef A\na\n#else\nb\n#endif", "b"],
    ["#ifndef A\na\n#endif", "a"],
    ["#if 0\n#if 1\na\n#else\nb\n#endif\n#else\nc\n#endif", "c"],
    ["#if 1\na\n#elif 1/0\nb\n#endif", "a"],
    ['#if 0\nit\'s "odd\n#error no\n#include "no.h"\n#endif\na', "a"],
    // C23 6.10.2.
    ["#define B\n#ifdef A\na\n#elifdef B\nb\n#endif", "b"],
    ["#if 0\n#elifndef A\nb\n#endif", "b"],
  ])("%j becomes %s", (text, result) => {
    const { tokens, problems } = readText(text);
    expect(spell(tokens)).toBe(result);
    expect(problems).toEqual([]);
  });

  test.each([
    ["#if 1\na", "a", "This conditional has no #endif."],
    ["#endif\na", "a", "#endif without an #if before it."],
    ["#else\na", "a", "#else without an #if before it."],
    ["#if 1\na\n#else\nb\n#else\nc\n#endif", "a", "#else behind the #else of the same #if."],
    ["#if 0\na\n#else\nb\n#elif 1\nc\n#endif", "b", "#elif behind the #else of the same #if."],
    ["#ifdef\na\n#endif", "", "#ifdef needs a name."],
  ])("%j is said", (text, result, message) => {
    const { tokens, problems } = readText(text);
    expect(spell(tokens)).toBe(result);
    expect(problems.map((problem) => problem.message)).toEqual([message]);
  });

  test("an unterminated string is said where it is read, not where it is skipped", () => {
    const { problems } = readText('#if 0\n"skipped\n#endif\n"read\n');
    expect(problems.map(({ span, message }) => [span.start, message])).toEqual([
      [22, 'No closing " on this line.'],
    ]);
  });
});

test("true and the operator words are names in C and known in C++ (C++20 [cpp.cond], [lex.digraph])", () => {
  const text = "#if true and not false\nyes\n#endif";
  expect(expand(text, { language: "c++" })).toBe("yes");
  expect(readText("#if true\nyes\n#endif").tokens).toEqual([]);
});

test("__has_include looks beside the file, on the include paths and among the built-in headers", () => {
  const text = `
#if __has_include("a.h") && __has_include(<b.h>) && __has_include(<c.h>) && !__has_include("d.h")
yes
#endif
#ifdef __has_include
known
#endif`;
  const files = { "main.c": text, "a.h": "", "lib/b.h": "" };
  const { tokens, problems, missing } = readFiles(files, { includePaths: ["lib"], standIns: { "c.h": "" } });
  expect(spell(tokens)).toBe("yes known");
  expect({ problems, missing }).toEqual({ problems: [], missing: [] });
});
