import { describe, expect, test } from "vitest";
import { expand, readText } from "./read.ts";

/* Results follow from C11 6.10.3 unless another source is named. */

describe("object macros", () => {
  test.each([
    ["#define A 1\nA B A", "1 B 1"],
    ["#define A\n[A]", "[ ]"],
    ["#define A A + B\n#define B A\nA", "A + A"],
    ["#define A (x)\nA (y)", "( x ) ( y )"],
    ["#define A 1\n#undef A\nA", "A"],
    ["#define A 1\n#define A 2\nA", "2"],
  ])("%j becomes %s", (text, result) => {
    expect(expand(text)).toBe(result);
  });
});

describe("function macros", () => {
  test.each([
    ["#define f(x) [x]\nf(1) f (2) f\n(3) f", "[ 1 ] [ 2 ] [ 3 ] f"],
    ["#define f() 0\nf() f( ) f", "0 0 f"],
    ["#define f(a, b) b a\nf((1, 2), 3)", "3 ( 1 , 2 )"],
    ["#define f(a) a\nf(f)(1)", "f ( 1 )"],
    ["#define f(a) a\n#define g f\ng(1)", "1"],
    ["#define f (a) a\nf(1)", "( a ) a ( 1 )"],
    ["#define bit(n) (1 << (n))\nbit(bit(2))", "( 1 << ( ( 1 << ( 2 ) ) ) )"],
  ])("%j becomes %s", (text, result) => {
    expect(expand(text)).toBe(result);
  });

  test("a directive ends the search for a parenthesis", () => {
    expect(expand("#define f(x) [x]\nf\n#define A 1\n(2)")).toBe("f ( 2 )");
  });

  test("directives inside arguments are carried out", () => {
    expect(expand("#define f(x) [x]\nf(a\n#if 0\nb\n#else\nc\n#endif\n)")).toBe("[ a c ]");
  });
});

describe("GNU extensions (The C Preprocessor, section Variadic Macros)", () => {
  test.each([
    ['#define e(f, ...) p(f, ##__VA_ARGS__)\ne("x") e("x", 1)', 'p ( "x" ) p ( "x" , 1 )'],
    ['#define e(f, rest...) p(f, ##rest)\ne("x") e("x", 1, 2)', 'p ( "x" ) p ( "x" , 1 , 2 )'],
    ["#define e(rest...) p(rest)\ne() e(1, 2)", "p ( ) p ( 1 , 2 )"],
  ])("%j becomes %s", (text, result) => {
    expect(expand(text)).toBe(result);
  });

  test("__COUNTER__ counts, __INCLUDE_LEVEL__ is 0 in the main file", () => {
    expect(expand("__COUNTER__ __COUNTER__ __INCLUDE_LEVEL__")).toBe("0 1 0");
  });
});

describe("calls that do not fit stay as written, with a note", () => {
  test.each([
    ["#define f(a, b) a\nf(1) x", "f ( 1 ) x", "f: the macro takes 2 arguments but is given 1."],
    ["#define f(a) a\nf(1, 2) x", "f ( 1 , 2 ) x", "f: the macro takes 1 argument but is given 2."],
    ["#define f() a\nf(1)", "f ( 1 )", "f: the macro takes 0 arguments but is given 1."],
    ["#define f(a, b, ...) a\nf(1)", "f ( 1 )", "f: the macro takes at least 2 arguments but is given 1."],
    ["#define A 5\n#define f(a) a\nf(A; x", "f ( 5 ; x", "f: the call has no closing parenthesis."],
  ])("%j", (text, result, message) => {
    const { tokens, problems } = readText(text);
    expect(tokens.map((token) => token.text).join(" ")).toBe(result);
    expect(problems.map((problem) => problem.message)).toEqual([message]);
  });
});

test("two tokens that ## cannot join stay apart, with a note at the call", () => {
  const text = "#define f(a) + ## a\nx f(y)";
  const { tokens, problems } = readText(text);
  expect(tokens.map((token) => token.text)).toEqual(["x", "+", "y"]);
  const [problem] = problems;
  expect(text.slice(problem?.span.start, problem?.span.end)).toBe("f(y)");
  expect(problem?.message).toBe('## cannot join "+" and "y" into one token.');
});

test.each([
  ["#define", "#define needs a name."],
  ["#define 3 x", "#define needs a name."],
  ["#define defined 1", '"defined" cannot be a macro.'],
  ["#define f(a,) x", "The parameter list of f is not a list of names in parentheses."],
  ["#define f(a", "The parameter list of f is not a list of names in parentheses."],
  ["#define f(..., a) x", "The parameter list of f is not a list of names in parentheses."],
  ["#define f(a) #b", "# in a macro with parameters needs one of them behind it."],
  ["#define A ## b", "## needs a token on both of its sides."],
  ["#define A b ##", "## needs a token on both of its sides."],
  ["#undef 4", "#undef needs a name."],
  ["#frobnicate", "#frobnicate is no directive."],
  ["#error stop here", "#error stop here"],
  ["#warning mind this", "#warning mind this"],
  ["#line x", "#line needs a line number."],
  ["#include", "#include needs a file name in quotes or angle brackets."],
])("%s: said where it stands", (text, message) => {
  const { problems } = readText(`x\n${text}\ny`);
  expect(problems.map((problem) => problem.message)).toEqual([message]);
  expect(problems[0]?.span.start).toBeGreaterThanOrEqual(2);
  expect(problems[0]?.span.end).toBeLessThanOrEqual(2 + text.length);
});
