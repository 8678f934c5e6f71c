import { describe, expect, test } from "vitest";
import { type Language, statements } from "./read.ts";

const both: readonly Language[] = ["c", "c++"];

describe("statements, C11 6.8", () => {
  test.each([
    ["for (;;);", "(for _ _ _ (empty))"],
    [
      "for (i = 0, j = 9; i < j; i++, j--) { }",
      "(for (, (= i 0) (= j 9)) (< i j) (, (_++ i) (_-- j)) (block))",
    ],
    ["for (int i = 0; i < 3; ++i) f(i);", "(for (declare (i int = 0)) (< i 3) (++_ i) (call f i))"],
    ["do x(); while (0);", "(do (call x) 0)"],
    ["do { a; } while (b && c);", "(do (block a) (&& b c))"],
    ["while (!(a & 1)) ;", "(while (!_ (& a 1)) (empty))"],
    ["if (a) b; else if (c) d; else e;", "(if a b (if c d e))"],
    // 6.8.4.1p3: else belongs to the nearest if
    ["if (a) if (b) c; else d;", "(if a (if b c d))"],
    ["if (a) { if (b) c; } else d;", "(if a (block (if b c)) d)"],
    ["return;", "(return)"],
    ["return a + 1;", "(return (+ a 1))"],
    ["return (a);", "(return a)"],
    ["{ { } ; }", "(block (block) (empty))"],
    ["break;", "(break)"],
    ["continue;", "(continue)"],
    ["*(volatile unsigned char *)0xC4 = 1;", "(= (*_ (cast (pointer volatile unsigned char) 0xC4)) 1)"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(statements(language, text)).toEqual([expected]);
  });

  test.each([
    ["again: x++; goto again;", ["(label again (_++ x))", "(goto again)"]],
    ["goto out; out: ;", ["(goto out)", "(label out (empty))"]],
    ["goto out; out: }  void g(void) {", undefined],
    ["a: b: c;", ["(label a (label b c))"]],
  ])("labels: %s", (text, expected) => {
    for (const language of both) {
      if (expected !== undefined) expect(statements(language, text)).toEqual(expected);
    }
  });

  test("a label before the closing brace labels nothing", () => {
    for (const language of both)
      expect(statements(language, "goto out; out:")).toEqual(["(goto out)", "(label out)"]);
  });
});

describe("switch, C11 6.8.1 and 6.8.4.2", () => {
  test.each([
    [
      "switch (x) { case 1: case 2: foo(); break; default: bar(); }",
      "(switch x (block (case 1 (case 2 (call foo))) (break) (default (call bar))))",
    ],
    ["switch (x) { case A ? B : C: d(); }", "(switch x (block (case (? A B C) (call d))))"],
    [
      "switch (x) { case 1: { a(); } break; default: ; }",
      "(switch x (block (case 1 (block (call a))) (break) (default (empty))))",
    ],
    ["switch (x) { case 1: default: }", "(switch x (block (case 1 (default))))"],
    // gcc manual, Case Ranges
    [
      "switch (x) { case 'a' ... 'z': y(); case 0 ... 9 | 1: ; }",
      "(switch x (block (case 'a' ... 'z' (call y)) (case 0 ... (| 9 1) (empty))))",
    ],
    ["switch (x) { while (a) { case 1: b(); } }", "(switch x (block (while a (block (case 1 (call b))))))"],
  ])("%s", (text, expected) => {
    for (const language of both) expect(statements(language, text)).toEqual([expected]);
  });
});

describe("inline assembly, gcc manual, Extended Asm", () => {
  test.each([
    ['asm("nop");', "(asm nop)"],
    ['asm volatile ("cli" ::: "memory");', "(asm cli operands)"],
    [
      '__asm__ __volatile__ ("lpm %0, Z" "\\n\\t" : "=r" (r) : "z" (a));',
      "(asm lpm %0, Z\\n\\t operands (=r r) (z a))",
    ],
    [
      'asm volatile ("1: dec %[n]\\n brne 1b" : [n] "+r" (count));',
      "(asm 1: dec %[n]\\n brne 1b operands (+r n count))",
    ],
    [
      'asm ("out %0, %1" :: "I" (_SFR_IO_ADDR(PORTB)), "r" (x + 1) : "cc", "memory");',
      "(asm out %0, %1 operands (I (call _SFR_IO_ADDR PORTB)) (r (+ x 1)))",
    ],
  ])("%s", (text, expected) => {
    for (const language of both) expect(statements(language, text)).toEqual([expected]);
  });
});

describe("what program-memory reads and atomic blocks expand to", () => {
  test("a statement with a value", () => {
    const text =
      'x = (__extension__({ uint16_t a = (uint16_t)(&t[i]); uint8_t r; __asm__ ("lpm" : "=r" (r) : "z" (a)); r; }));';
    for (const language of both) {
      expect(statements(language, text)).toEqual([
        "(= x (statement-value (block (declare (a uint16_t = (cast uint16_t (&_ (index t i))))) (declare (r uint8_t)) (asm lpm operands (=r r) (z a)) r)))",
      ]);
    }
  });

  test("a loop that runs once", () => {
    const text =
      "for (uint8_t s __attribute__((__cleanup__(__iRestore))) = SREG, todo = __iCliRetVal(); todo; todo = 0) { x = 1; }";
    for (const language of both) {
      expect(statements(language, text)).toEqual([
        "(for (declare (s uint8_t [__cleanup__ __iRestore] = SREG) (todo uint8_t = (call __iCliRetVal))) todo (= todo 0) (block (= x 1)))",
      ]);
    }
  });

  test("a string kept in program memory", () => {
    const text =
      'p = (__extension__({ static const char c[] __attribute__((__progmem__)) = ("abc"); &c[0]; }));';
    expect(statements("c", text)).toEqual([
      '(= p (statement-value (block (declare (c (array ? static const char) [__progmem__] = "abc")) (&_ (index c 0)))))',
    ]);
  });
});

describe("C++ statements", () => {
  test.each([
    // [stmt.ranged]
    ["for (auto &x : xs) x += 1;", "(range-for x (reference auto) xs (+= x 1))"],
    ["for (const Foo *p : {a, b}) { }", "(range-for p (pointer const Foo) (list a b) (block))"],
    ["for (int i : t) f(i);", "(range-for i int t (call f i))"],
    // [stmt.select]: declarations in conditions, init statements
    ["if (int n = read()) use(n);", "(if (declare (n int = (call read))) (call use n))"],
    ["if (int n = read(); n > 0) use(n);", "(if (declare (n int = (call read))) (> n 0) (call use n))"],
    [
      "for (int i = 3; const char *p = next(i); i--) use(p);",
      "(for (declare (i int = 3)) (declare (p (pointer const char) = (call next i))) (_-- i) (call use p))",
    ],
    [
      "while (Foo *p = next()) p->go();",
      "(while (declare (p (pointer Foo) = (call next))) (call (-> p go)))",
    ],
    [
      "switch (int n = read()) { default: ; }",
      "(switch (declare (n int = (call read))) (block (default (empty))))",
    ],
    ["if constexpr (a) b;", "(if a b)"],
    ["using namespace n;", "(using-namespace n)"],
    ["static_assert(sizeof(int) == 2);", "(static-assert (== (sizeof-type int) 2))"],
    ["delete p;", "(delete p)"],
    ["delete[] p;", "(delete[] p)"],
    ['Serial.println(F("a"), HEX);', '(call (. Serial println) (call F "a") HEX)'],
    [
      "auto f = [](int a) { return a; };",
      "(declare (f auto = (lambda [] (function [a: int] _) (block (return a)))))",
    ],
    ["Foo x{1, 2};", "(declare (x Foo (init{} 1 2)))"],
    ["Foo x = {1};", "(declare (x Foo = (list 1)))"],
    ["x.operator()(1);", "(call (. x operator()) 1)"],
  ])("%s", (text, expected) => {
    expect(statements("c++", text)).toEqual([expected]);
  });
});
