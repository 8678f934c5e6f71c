import { describe, expect, test } from "vitest";
import { expand } from "./read.ts";

/* Examples of ISO/IEC 9899:2011 (C11) with the results that the standard prints; white space does not count. */

function squeezed(text: string): string {
  return text.replace(/\s+/g, "");
}

describe("C11 6.10.3.5", () => {
  test("example 3: redefinition and reexamination", () => {
    const text = `
      #define x 3
      #define f(a) f(x * (a))
      #undef x
      #define x 2
      #define g f
      #define z z[0]
      #define h g(~
      #define m(a) a(w)
      #define w 0,1
      #define t(a) a
      #define p() int
      #define q(x) x
      #define r(x,y) x ## y
      #define str(x) # x
      f(y+1) + f(f(z)) % t(t(g)(0) + t)(1);
      g(x+(3,4)-w) | h 5) & m
      (f)^m(m);
      p() i[q()] = { q(1), r(2,3), r(4,), r(,5), r(,) };
      char c[2][6] = { str(hello), str() };`;
    const result = `
      f(2 * (y+1)) + f(2 * (f(2 * (z[0])))) % f(2 * (0)) + t(1);
      f(2 * (2+(3,4)-0,1)) | f(2 * (~ 5)) & f(2 * (0,1))^m(0,1);
      int i[] = { 1, 23, 4, 5, };
      char c[2][6] = { "hello", "" };`;
    expect(squeezed(expand(text))).toBe(squeezed(result));
  });

  test("example 4: strings and pasting", () => {
    const text = `
      #define str(s) # s
      #define xstr(s) str(s)
      #define debug(s, t) printf("x" # s "= %d, x" # t "= %s", \\
                                 x ## s, x ## t)
      #define INCFILE(n) vers ## n
      #define glue(a, b) a ## b
      #define xglue(a, b) glue(a, b)
      #define HIGHLOW "hello"
      #define LOW LOW ", world"
      debug(1, 2);
      fputs(str(strncmp("abc\\0d", "abc", '\\4') // this goes away
            == 0) str(: @\\n), s);
      xstr(INCFILE(2).h)
      glue(HIGH, LOW);
      xglue(HIGH, LOW)`;
    const result = `
      printf("x" "1" "= %d, x" "2" "= %s", x1, x2);
      fputs("strncmp(\\"abc\\\\0d\\", \\"abc\\", '\\\\4') == 0" ": @\\n", s);
      "vers2.h"
      "hello";
      "hello" ", world"`;
    expect(squeezed(expand(text))).toBe(squeezed(result));
  });

  test("example 5: placemarkers", () => {
    const text = `
      #define t(x,y,z) x ## y ## z
      int j[] = { t(1,2,3), t(,4,5), t(6,,7), t(8,9,),
                  t(10,,), t(,11,), t(,,12), t(,,) };`;
    const result = "int j[] = { 123, 45, 67, 89, 10, 11, 12, };";
    expect(squeezed(expand(text))).toBe(squeezed(result));
  });

  test("example 7: variable arguments", () => {
    const text = `
      #define debug(...) fprintf(stderr, __VA_ARGS__)
      #define showlist(...) puts(#__VA_ARGS__)
      #define report(test, ...) ((test)?puts(#test):\\
                                 printf(__VA_ARGS__))
      debug("Flag");
      debug("X = %d\\n", x);
      showlist(The first, second, and third items.);
      report(x>y, "x is %d but y is %d", x, y);`;
    const result = `
      fprintf(stderr, "Flag" );
      fprintf(stderr, "X = %d\\n", x );
      puts( "The first, second, and third items." );
      ((x>y)?puts("x>y"): printf("x is %d but y is %d", x, y));`;
    expect(squeezed(expand(text))).toBe(squeezed(result));
  });
});

test("C11 6.10.3.3, example: ## made by ## is no operator", () => {
  const text = `
    #define hash_hash # ## #
    #define mkstr(a) # a
    #define in_between(a) mkstr(a)
    #define join(c, d) in_between(c hash_hash d)
    char p[] = join(x, y);`;
  expect(expand(text)).toBe('char p [ ] = "x ## y" ;');
});

describe("C++20 [cpp.subst], example of __VA_OPT__", () => {
  const macros = `
    #define F(...)           f(0 __VA_OPT__(,) __VA_ARGS__)
    #define G(X, ...)        f(0, X __VA_OPT__(,) __VA_ARGS__)
    #define SDEF(sname, ...) S sname __VA_OPT__(= { __VA_ARGS__ })
    #define EMP
    #define H2(X, Y, ...)    __VA_OPT__(X ## Y,) __VA_ARGS__
    #define H3(X, ...)       #__VA_OPT__(X##X X##X)
    #define H4(X, ...)       __VA_OPT__(a X ## X) ## b
    #define H5A(...)         __VA_OPT__()/**/__VA_OPT__()
    #define H5B(X)           a ## X ## b
    #define H5C(X)           H5B(X)
`;
  test.each([
    ["F(a, b, c)", "f(0, a, b, c)"],
    ["F()", "f(0)"],
    ["F(EMP)", "f(0)"],
    ["G(a, b, c)", "f(0, a, b, c)"],
    ["G(a, )", "f(0, a)"],
    ["G(a)", "f(0, a)"],
    ["SDEF(foo);", "S foo;"],
    ["SDEF(bar, 1, 2);", "S bar = { 1, 2 };"],
    ["H2(a, b, c, d)", "ab, c, d"],
    ["H3(, 0)", '""'],
    ["H5C(H5A())", "ab"],
  ])("%s becomes %s", (call, result) => {
    expect(squeezed(expand(macros + call))).toBe(squeezed(result));
  });

  test("H4(, 1) becomes a b: two tokens", () => {
    expect(expand(`${macros}H4(, 1)`)).toBe("a b");
  });
});

test("C11 6.10.8.1 and C11 6.10.4: __LINE__, __FILE__ and #line", () => {
  expect(expand('__LINE__\n\n__LINE__ __FILE__\n#line 42 "other.c"\n__LINE__ __FILE__\n')).toBe(
    '1 3 "main.c" 42 "other.c"',
  );
});
