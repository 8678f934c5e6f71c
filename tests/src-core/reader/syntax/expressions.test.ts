import { describe, expect, test } from "vitest";
import { expression, type Language } from "./read.ts";

const both: readonly Language[] = ["c", "c++"];

describe("precedence and grouping, C11 6.5 and C++ [expr]", () => {
  test.each([
    // 6.5.5 to 6.5.14, each level against the next
    ["a + b * c", "(+ a (* b c))"],
    ["a << b + c", "(<< a (+ b c))"],
    ["a < b << c", "(< a (<< b c))"],
    ["a == b < c", "(== a (< b c))"],
    ["a & b == c", "(& a (== b c))"],
    ["a ^ b & c", "(^ a (& b c))"],
    ["a | b ^ c", "(| a (^ b c))"],
    ["a && b | c", "(&& a (| b c))"],
    ["a || b && c", "(|| a (&& b c))"],
    ["a ? b : c || d", "(? a b (|| c d))"],
    ["a | b << 4 & 0xF0", "(| a (& (<< b 4) 0xF0))"],
    // binary operators group from the left
    ["a - b - c", "(- (- a b) c)"],
    ["a / b * c % d", "(% (* (/ a b) c) d)"],
    ["a << b >> c", "(>> (<< a b) c)"],
    ["a < b < c", "(< (< a b) c)"],
    ["a == b != c", "(!= (== a b) c)"],
    ["a, b, c", "(, (, a b) c)"],
    // 6.5.15, 6.5.16: conditionals and assignments from the right
    ["a ? b : c ? d : e", "(? a b (? c d e))"],
    ["a ? b ? c : d : e", "(? a (? b c d) e)"],
    ["a ? b, c : d", "(? a (, b c) d)"],
    ["a = b = c", "(= a (= b c))"],
    ["a += b -= c, d", "(, (+= a (-= b c)) d)"],
    ["a = b ? c : d", "(= a (? b c d))"],
    ["a <<= b | c", "(<<= a (| b c))"],
    // parentheses
    ["(a + b) * c", "(* (+ a b) c)"],
    ["a - (b - c)", "(- a (- b c))"],
    ["((a))", "a"],
    ["(a, b)", "(, a b)"],
    ["f((a, b), c)", "(call f (, a b) c)"],
    // a comma behind an assignment in parentheses
    ["(a &= ~b, c |= b)", "(, (&= a (~_ b)) (|= c b))"],
    ["(a = 1, b = 2, c)", "(, (, (= a 1) (= b 2)) c)"],
    ["((a = b, c), *p <<= 2)", "(, (, (= a b) c) (<<= (*_ p) 2))"],
    ["(a->b -= 1, f(c)) + 1", "(+ (, (-= (-> a b) 1) (call f c)) 1)"],
    ["x ? (a[1] ^= b, c) : d", "(? x (, (^= (index a 1) b) c) d)"],
    ["(void)(a %= b ? 1 : 2, c)", "(cast void (, (%= a (? b 1 2)) c))"],
    ["sizeof(a = b, c)", "(sizeof (, (= a b) c))"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(expression(language, text)).toBe(expected);
  });
});

describe("postfix and unary operators, C11 6.5.2 and 6.5.3", () => {
  test.each([
    ["-x++", "(-_ (_++ x))"],
    ["!x--", "(!_ (_-- x))"],
    ["*p++", "(*_ (_++ p))"],
    ["(*p)++", "(_++ (*_ p))"],
    ["++*p", "(++_ (*_ p))"],
    ["*++p", "(*_ (++_ p))"],
    ["-~!a", "(-_ (~_ (!_ a)))"],
    ["- -a", "(-_ (-_ a))"],
    ["a - -b", "(- a (-_ b))"],
    ["a+++b", "(+ (_++ a) b)"],
    ["-a * b", "(* (-_ a) b)"],
    ["!a == b", "(== (!_ a) b)"],
    ["~a & b", "(& (~_ a) b)"],
    ["&a[1]", "(&_ (index a 1))"],
    ["*a.b", "(*_ (. a b))"],
    ["(*a).b", "(. (*_ a) b)"],
    ["a->b.c[1]++", "(_++ (index (. (-> a b) c) 1))"],
    ["-f(x)", "(-_ (call f x))"],
    ["*f(x)", "(*_ (call f x))"],
    ["f(x)(y)[z].w", "(. (index (call (call f x) y) z) w)"],
    ["*p * *q", "(* (*_ p) (*_ q))"],
    ["a & &b", "(& a (&_ b))"],
    ["&*p", "(&_ (*_ p))"],
    ["f()", "(call f)"],
    // 6.5.3.4
    ["sizeof x + 1", "(+ (sizeof x) 1)"],
    ["sizeof *p", "(sizeof (*_ p))"],
    ["sizeof -x", "(sizeof (-_ x))"],
    ["sizeof x.y", "(sizeof (. x y))"],
    ["sizeof(x)[0]", "(sizeof (index x 0))"],
    ["sizeof(int) * 2", "(* (sizeof-type int) 2)"],
    ["sizeof a / sizeof a[0]", "(/ (sizeof a) (sizeof (index a 0)))"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(expression(language, text)).toBe(expected);
  });
});

describe("casts, C11 6.5.4", () => {
  test.each([
    ["(char) a * b", "(* (cast char a) b)"],
    ["(char) *p", "(cast char (*_ p))"],
    ["(char) -a + b", "(+ (cast char (-_ a)) b)"],
    ["(int) (a) + b", "(+ (cast int a) b)"],
    ["(int) a[1]", "(cast int (index a 1))"],
    ["(int) a.b++", "(cast int (_++ (. a b)))"],
    ["(unsigned char) (int) ~a", "(cast unsigned char (cast int (~_ a)))"],
    ["-(int) a", "(-_ (cast int a))"],
    ["*(volatile unsigned char *) 0xC4", "(*_ (cast (pointer volatile unsigned char) 0xC4))"],
    ["(void (*)(int)) p", "(cast (pointer (function [int] void)) p)"],
    ["(const struct s *) p", "(cast (pointer const (struct s)) p)"],
    ["(int) sizeof a", "(cast int (sizeof a))"],
    ["!(int) a", "(!_ (cast int a))"],
    ["(long) a << 8", "(<< (cast long a) 8)"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(expression(language, text)).toBe(expected);
  });
});

describe("literals", () => {
  test.each([
    // C11 6.4.4.1, 6.4.4.2; binary constants: gcc manual, "Binary constants"
    ["0x1Ful", "0x1Ful"],
    ["0b1010u", "0b1010u"],
    ["017", "017"],
    ["1.5e-3f", "1.5e-3f"],
    [".5", ".5"],
    ["0x1p-3", "0x1p-3"],
    ["'a'", "'a'"],
    ["'\\x41'", "'\\x41'"],
    ["'\\''", "'\\''"],
    ['"a\\"b"', '"a\\"b"'],
    // 6.4.5p5: adjacent strings are one
    ['"a" "b" L"c"', '(string "a" "b" L"c")'],
  ])("%s", (text, expected) => {
    for (const language of both) expect(expression(language, text)).toBe(expected);
  });

  test("of C++: digit separators, suffixes of one's own, words", () => {
    expect(expression("c++", "1'000'000")).toBe("1'000'000");
    expect(expression("c++", "10_ms")).toBe("10_ms");
    expect(expression("c++", "true")).toBe("true");
    expect(expression("c++", "nullptr")).toBe("nullptr");
    expect(expression("c++", "this->x")).toBe("(-> this x)");
  });

  test("what C++ reserves is a name like others in C", () => {
    expect(expression("c", "new + delete * this")).toBe("(+ new (* delete this))");
    expect(expression("c", "class->private.template")).toBe("(. (-> class private) template)");
  });

  test("names that the grammar knows as types or constants are names", () => {
    expect(expression("c", "NULL")).toBe("NULL");
    expect(expression("c", "uint8_t + size_t")).toBe("(+ uint8_t size_t)");
    expect(expression("c++", "final + override")).toBe("(+ final override)");
  });
});

describe("initialisers, compound literals and GNU forms", () => {
  test.each([
    ["(struct p){1, 2}", "(compound (struct p) (list 1 2))"],
    ["(int[]){1, 2}[0]", "(index (compound (array ? int) (list 1 2)) 0)"],
    ["(struct p){.x = 1, .y[2] = 3}.x", "(. (compound (struct p) (list (= .x 1) (= .y[2] 3))) x)"],
    ["a ?: b", "(? a _ b)"],
    ["({ int a = 1; a + 1; })", "(statement-value (block (declare (a int = 1)) (+ a 1)))"],
    ["__extension__ (a + b)", "(+ a b)"],
    ["__builtin_offsetof(struct s, a.b)", "(offsetof (struct s) a.b)"],
    ["__builtin_va_arg(list, const char *)", "(next-argument list (pointer const char))"],
    ["__alignof__(int)", "(alignof int)"],
  ])("%s", (text, expected) => {
    expect(expression("c", text)).toBe(expected);
  });
});

describe("C++ expressions", () => {
  test.each([
    ["static_cast<int>(a) & 1", "(& (static_cast int a) 1)"],
    ["reinterpret_cast<char *>(p)", "(reinterpret_cast (pointer char) p)"],
    ["const_cast<const int &>(a)", "(const_cast (reference const int) a)"],
    ["int(a) - 1", "(- (functional int a) 1)"],
    ["int{3}", "(compound int (list 3))"],
    ["new int", "(new int)"],
    ["new int[n]", "(new int [n])"],
    ["new Foo(1, 2)", "(new Foo 1 2)"],
    ["a not_eq b and not c", "(&& (!= a b) (!_ c))"],
    ["::g(1)", "(call ::g 1)"],
    ["N::C::f(1)", "(call N::C::f 1)"],
    ["a.b<c", "(< (. a b) c)"],
    ["o.operator[](1)", "(call (. o operator[]) 1)"],
    ["[] { return 1; }", "(lambda [] (block (return 1)))"],
    ["[=, &x](int a) { }", "(lambda [copy, &x] (function [a: int] _) (block))"],
    ["[&]() mutable -> int { return 1; }", "(lambda [reference] (function [] int) (block (return 1)))"],
    ["[n = a + 1, this] { }", "(lambda [n = (+ a 1), this] (block))"],
    ["f([](int a) { return a; }, 3)", "(call f (lambda [] (function [a: int] _) (block (return a))) 3)"],
    ["f({1, 2})", "(call f (list 1 2))"],
  ])("%s", (text, expected) => {
    expect(expression("c++", text)).toBe(expected);
  });
});
