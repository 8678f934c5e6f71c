import { describe, expect, test } from "vitest";
import { type Language, tree, trees } from "./read.ts";

const both: readonly Language[] = ["c", "c++"];

describe("specifiers, C11 6.7.1 to 6.7.3", () => {
  test.each([
    ["register int i;", "(declare (i register int))"],
    ["unsigned long int x;", "(declare (x unsigned long int))"],
    ["long unsigned x;", "(declare (x long unsigned))"],
    ["int const unsigned volatile x;", "(declare (x const volatile int unsigned))"],
    ["static const char c = 1;", "(declare (c static const char = 1))"],
    ["extern volatile int x;", "(declare (x extern volatile int))"],
    ["signed char s, *t;", "(declare (s signed char) (t (pointer signed char)))"],
    ["long long x;", "(declare (x long long))"],
    ["static inline int f(void);", "(declare (f (function [void] static inline int)))"],
    ["const struct x *f(void);", "(declare (f (function [void] (pointer const (struct x)))))"],
    ["struct s;", "(type (struct s))"],
    ["enum e x;", "(declare (x (enum e)))"],
    ["__uint24 x;", "(declare (x __uint24))"],
    ["__typeof__(a + 1) x;", "(declare (x (typeof (+ a 1))))"],
    ['_Static_assert(1 < 2, "text");', "(static-assert (< 1 2))"],
    [";", "(empty)"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(tree(language, text)).toBe(expected);
  });

  test("main without a type, as old sources have it", () => {
    expect(tree("c", "main() { return 0; }")).toBe("(define main (function []) (block (return 0)))");
  });
});

describe("declarators, C11 6.7.6", () => {
  test.each([
    ["int *a[3];", "(declare (a (array 3 (pointer int))))"],
    ["int (*a)[3];", "(declare (a (pointer (array 3 int))))"],
    ["volatile char * const p;", "(declare (p (pointer const volatile char)))"],
    ["char * const volatile * q;", "(declare (q (pointer (pointer const volatile char))))"],
    ["char * restrict p;", "(declare (p (pointer char)))"],
    ["int a[2][3];", "(declare (a (array 2 (array 3 int))))"],
    [
      "int a = 1, *b = &a, c[2] = {1, 2};",
      "(declare (a int = 1) (b (pointer int) = (&_ a)) (c (array 2 int) = (list 1 2)))",
    ],
    ["void (*handlers[4])(char);", "(declare (handlers (array 4 (pointer (function [char] void)))))"],
    ["int (*f(int a))(char);", "(declare (f (function [a: int] (pointer (function [char] int)))))"],
    ["int (*(*fp)(int))(char);", "(declare (fp (pointer (function [int] (pointer (function [char] int))))))"],
    [
      "void (*signal(int sig, void (*func)(int)))(int);",
      "(declare (signal (function [sig: int, func: (pointer (function [int] void))] (pointer (function [int] void)))))",
    ],
    [
      "int atexit(void (*func)(void));",
      "(declare (atexit (function [func: (pointer (function [void] void))] int)))",
    ],
    ["int printf(const char *, ...);", "(declare (printf (function [(pointer const char), ...] int)))"],
    ["int (f)(int a);", "(declare (f (function [a: int] int)))"],
    [
      "void f(int a[], int (*b)[2], char c[4]);",
      "(declare (f (function [a: (array ? int), b: (pointer (array 2 int)), c: (array 4 char)] void)))",
    ],
    [
      "typedef int (*compare)(const void *, const void *);",
      "(declare (compare (pointer (function [(pointer const void), (pointer const void)] typedef int))))",
    ],
    ['char s[] = "a" "b";', '(declare (s (array ? char) = (string "a" "b")))'],
  ])("%s", (text, expected) => {
    expect(tree("c", text)).toBe(expected);
    if (!text.includes("restrict")) expect(tree("c++", text)).toBe(expected);
  });

  test("prototypes with types that nobody declared", () => {
    expect(tree("c", "buffer_t *make(buffer_t *from, size_t);")).toBe(
      "(declare (make (function [from: (pointer buffer_t), size_t] (pointer buffer_t))))",
    );
  });
});

describe("initialisers, C11 6.7.9 and gcc manual, Designated Inits", () => {
  test.each([
    ["int t[] = {1, 2, };", "(declare (t (array ? int) = (list 1 2)))"],
    ["int t[4] = {[2] = 3, [0] = 1};", "(declare (t (array 4 int) = (list (= [2] 3) (= [0] 1))))"],
    ["int t[9] = {[1 ... 5] = 4};", "(declare (t (array 9 int) = (list (= [1 ... 5] 4))))"],
    [
      "struct p q = {.x = 1, .y[2].z = {3}};",
      "(declare (q (struct p) = (list (= .x 1) (= .y[2].z (list 3)))))",
    ],
    ["struct p q = {x: 1};", "(declare (q (struct p) = (list (= .x 1))))"],
    [
      "int m[2][2] = {{1, 2}, {3, 4}};",
      "(declare (m (array 2 (array 2 int)) = (list (list 1 2) (list 3 4))))",
    ],
    [
      "int (*table[])(void) = {f, &g};",
      "(declare (table (array ? (pointer (function [void] int))) = (list f (&_ g))))",
    ],
    ["struct p z = {};", "(declare (z (struct p) = (list)))"],
  ])("%s", (text, expected) => {
    expect(tree("c", text)).toBe(expected);
  });
});

describe("records and enumerations, C11 6.7.2", () => {
  test.each([
    [
      "struct { unsigned char x : 3, : 2, y : 1; } z;",
      "(declare (z (struct (declare (x unsigned char : 3) (_ unsigned char : 2) (y unsigned char : 1)))))",
    ],
    [
      "struct s { int a : 1; int : 0; int b; };",
      "(type (struct s (declare (a int : 1)) (declare (_ int : 0)) (declare (b int))))",
    ],
    [
      "struct node { struct node *next; int (*f)(struct node *); };",
      "(type (struct node (declare (next (pointer (struct node)))) (declare (f (pointer (function [(pointer (struct node))] int))))))",
    ],
    [
      "union u { struct { unsigned a : 1; }; unsigned char all; };",
      "(type (union u (type (struct (declare (a unsigned : 1)))) (declare (all unsigned char))))",
    ],
    ["enum { A, B = 2, };", "(type (enum A (= B 2)))"],
    ["enum e { A = 1 << 2, B = A | 1 } x = A;", "(declare (x (enum e (= A (<< 1 2)) (= B (| A 1))) = A))"],
    [
      "typedef struct point { int x, y; } point_t, *point_p;",
      "(declare (point_t typedef (struct point (declare (x int) (y int)))) (point_p (pointer typedef (struct point (declare (x int) (y int))))))",
    ],
    ["typedef enum { ON, OFF } state_t;", "(declare (state_t typedef (enum ON OFF)))"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(tree(language, text)).toBe(expected);
  });
});

describe("attributes, gcc manual, Attribute Syntax", () => {
  test.each([
    [
      "static inline __attribute__((always_inline)) void f(void);",
      "(declare (f (function [void] static inline void [always_inline])))",
    ],
    [
      "__attribute__((noinline)) int f(void) { return 1; }",
      "(define f (function [void] int [noinline]) (block (return 1)))",
    ],
    ["int __attribute__((used)) x;", "(declare (x int [used]))"],
    [
      "const char t[] __attribute__((progmem)) = {1};",
      "(declare (t (array ? const char) [progmem] = (list 1)))",
    ],
    ['int a __attribute__((section(".x"))), *b;', '(declare (a int [section ".x"]) (b (pointer int)))'],
    [
      "typedef struct { char a; } __attribute__((packed)) report_t;",
      "(declare (report_t typedef (struct [packed] (declare (a char)))))",
    ],
    [
      "struct __attribute__((packed, aligned(2))) s { char a; };",
      "(type (struct s [packed] [aligned 2] (declare (a char))))",
    ],
    ["void v(void) __attribute__((signal, used));", "(declare (v (function [void] void) [signal] [used]))"],
    [
      "void f(int a __attribute__((unused)), int b) { }",
      "(define f (function [a: int [unused], b: int] void) (block))",
    ],
    ["struct s { int x __attribute__((aligned(4))); };", "(type (struct s (declare (x int [aligned 4]))))"],
    [
      "void (*p)(void) __attribute__((weak)) = 0;",
      "(declare (p (pointer (function [void] void)) [weak] = 0))",
    ],
    ['int f(void) __asm__("name") __attribute__((pure));', "(declare (f (function [void] int) [pure]))"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(tree(language, text)).toBe(expected);
  });

  test.each([
    ["[[nodiscard]] int f();", "(declare (f (function [] int [nodiscard])))"],
    ["[[gnu::packed, noreturn]] int f();", "(declare (f (function [] int [packed] [noreturn])))"],
    ["alignas(4) int x;", "(declare (x int [aligned 4]))"],
    ["struct alignas(8) s { };", "(type (struct s [aligned 8] {}))"],
  ])("%s, C++ [dcl.attr]", (text, expected) => {
    expect(tree("c++", text)).toBe(expected);
  });

  test("of a handler for an interrupt, as avr/interrupt.h makes them", () => {
    const text =
      'extern "C" void __vector_1 (void) __attribute__((signal,used, externally_visible)) ; void __vector_1 (void) { x++; }';
    expect(trees("c++", text)).toEqual([
      "(linkage C (declare (__vector_1 (function [void] void) [signal] [used] [externally_visible])))",
      "(define __vector_1 (function [void] void) (block (_++ x)))",
    ]);
  });
});
