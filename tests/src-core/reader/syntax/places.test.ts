import { describe, expect, test } from "vitest";
import type { Place } from "../../../../src-core/reader/syntax/nodes.ts";
import { type PlacedNode, placedWithin } from "./places.ts";
import { expressionTree, type Language, read } from "./read.ts";
import { tokenize } from "./tokenize.ts";

const sources: readonly (readonly [Language, string])[] = [
  ["c", "static const unsigned long int x = 1, *const y = &x; int (*f(int a))(char);"],
  [
    "c",
    "typedef struct { unsigned a : 3, : 2; char s[4]; } __attribute__((packed)) report_t; enum { A, B = 2 };",
  ],
  [
    "c",
    "void f(int n) { for (int i = 0; i < n; i++) if (a[i] == -n++) continue; else g((char) i, sizeof(int)); }",
  ],
  [
    "c",
    'void f(void) { switch (x) { case 1 ... 3: a(); break; default: ; } do x--; while (x); asm volatile ("nop" :: "r" (x)); }',
  ],
  ["c", "void f(void) { x = ; y = (struct p){.x = 1, [2] = 3}; return (a, b ? c : d); }"],
  [
    "c++",
    "class C : public B { public: explicit C(int n) : a(n), b{1} { } virtual void f() const = 0; operator bool() const; int operator[](int i); };",
  ],
  [
    "c++",
    "template <typename T, int N = 3> struct R { T t[N]; }; R<int, 3> r; R<R<int, 1>, 2> q; int C::g() { return static_cast<int>(x) + T(3); }",
  ],
  [
    "c++",
    "void f() { auto l = [&, n = 3](int a) -> int { return a + n; }; for (auto &x : xs) x.y(new int[3]); delete[] p; }",
  ],
];

function check(parent: Place, nodes: readonly PlacedNode[]): void {
  for (const node of nodes) {
    expect(node.first, JSON.stringify(node)).toBeGreaterThanOrEqual(parent.first);
    expect(node.end, JSON.stringify(node)).toBeLessThanOrEqual(parent.end);
    expect(node.end, JSON.stringify(node)).toBeGreaterThanOrEqual(node.first);
    check(node, placedWithin(node));
  }
}

describe("every node lies within the one it belongs to", () => {
  test.each(sources)("%s: %s", (language, text) => {
    const { declarations } = read(language, text);
    check({ first: 0, end: tokenize(text).length }, placedWithin(declarations));
  });
});

describe("the tokens of a node", () => {
  const words = (text: string, { first, end }: Place): string =>
    tokenize(`void f(void) { return ${text}; }`)
      .slice(first, end)
      .map((token) => token.text)
      .join(" ");

  test.each(["(a + b) * c", "(T) - b", "-x++", "f(a, b)[1]", "a ? b : c", "sizeof(int)", '"a" "b"', "a, b"])(
    "an expression has all its tokens: %s",
    (text) => {
      const whole = tokenize(text)
        .map((token) => token.text)
        .join(" ");
      expect(words(text, expressionTree("c", text))).toBe(whole);
    },
  );

  test("parentheses around an expression are none of its own", () => {
    expect(words("(a)", expressionTree("c", "(a)"))).toBe("a");
    expect(words("(a + b) * c", expressionTree("c", "(a + b) * c"))).toBe("( a + b ) * c");
  });

  test("declarations include what stands before the type and the semicolon", () => {
    const text = "static const int x = 1; extern unsigned long y; volatile struct s *p;";
    const tokens = tokenize(text);
    const texts = read("c", text).declarations.map(({ first, end }) =>
      tokens
        .slice(first, end)
        .map((token) => token.text)
        .join(" "),
    );
    expect(texts).toEqual([
      "static const int x = 1 ;",
      "extern unsigned long y ;",
      "volatile struct s * p ;",
    ]);
  });
});
