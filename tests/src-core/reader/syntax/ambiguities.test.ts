import { describe, expect, test } from "vitest";
import { expression, statements, tree, trees } from "./read.ts";

/** What the grammar alone cannot say: each form with a name that is a type and with one that is none. */
const types = "typedef unsigned char T; enum { V = 3 }; int a, b, c;";

describe("a name in parentheses before an operand: C11 6.5.4 against 6.5.1", () => {
  test.each([
    ["(T) - b", "(cast T (-_ b))"],
    ["(a) - b", "(- a b)"],
    ["(T) + b", "(cast T (+_ b))"],
    ["(a) + b", "(+ a b)"],
    ["(T) * b", "(cast T (*_ b))"],
    ["(a) * b", "(* a b)"],
    ["(T) & b", "(cast T (&_ b))"],
    ["(a) & b", "(& a b)"],
    ["(T) (b)", "(cast T b)"],
    ["(a) (b)", "(call a b)"],
    ["(V) - 1", "(- V 1)"],
    // with what binds closer or less close around it
    ["(a) - b * c", "(- a (* b c))"],
    ["(T) - b * c", "(* (cast T (-_ b)) c)"],
    ["(a) & b == c", "(& a (== b c))"],
    ["(T) & b == c", "(== (cast T (&_ b)) c)"],
    ["a * (b) - c", "(- (* a b) c)"],
    ["a * (T) - c", "(* a (cast T (-_ c)))"],
    ["-(a) * b", "(* (-_ a) b)"],
    ["-(T) * b", "(-_ (cast T (*_ b)))"],
    ["(T) (a) - (b) - c", "(- (- (cast T a) b) c)"],
    ["(a)[b]", "(index a b)"],
    ["(a)++", "(_++ a)"],
    ["(a) << b", "(<< a b)"],
    ["(T) a << b", "(<< (cast T a) b)"],
    ["(T) (a)[b]", "(cast T (index a b))"],
    // more than a name in the parentheses
    ["(f(a)) - b", "(- (call f a) b)"],
    ["(a[1]) - b", "(- (index a 1) b)"],
    ["(a * (b)) - c", "(- (* a b) c)"],
    ["(T *) - b", "(cast (pointer T) (-_ b))"],
    ["(T) ~b", "(cast T (~_ b))"],
    ["((a)) - b", "(- a b)"],
  ])("%s", (text, expected) => {
    expect(expression("c", text, types)).toBe(expected);
    expect(expression("c++", text, types)).toBe(expected);
  });

  test("an unknown name is a type only where nothing else makes sense", () => {
    expect(expression("c", "(u) x")).toBe("(cast u x)");
    expect(expression("c", "(u) ~x")).toBe("(cast u (~_ x))");
    expect(expression("c", "(u *) x")).toBe("(cast (pointer u) x)");
    expect(expression("c", "(u) - x")).toBe("(- u x)");
    // Names ending in _t are reserved for types by POSIX.1-2017, 2.2.2 The Name Space.
    expect(expression("c", "(u_t) - x")).toBe("(cast u_t (-_ x))");
  });
});

describe("sizeof of a type and of a value, C11 6.5.3.4", () => {
  test.each([
    ["sizeof(T)", "(sizeof-type T)"],
    ["sizeof(a)", "(sizeof a)"],
    ["sizeof(T) * b", "(* (sizeof-type T) b)"],
    ["sizeof(a) * b", "(* (sizeof a) b)"],
    ["sizeof(T) - 1", "(- (sizeof-type T) 1)"],
    ["sizeof(a) - 1", "(- (sizeof a) 1)"],
    ["sizeof(T[4])", "(sizeof-type (array 4 T))"],
    ["sizeof(a[4])", "(sizeof (index a 4))"],
    ["sizeof(f(a))", "(sizeof (call f a))"],
  ])("%s", (text, expected) => {
    expect(expression("c", text, types)).toBe(expected);
    expect(expression("c++", text, types)).toBe(expected);
  });
});

describe("a statement that could be a declaration, C++ [stmt.ambig]", () => {
  test.each([
    ["a * b;", "(* a b)"],
    ["T * b;", "(declare (b (pointer T)))"],
    ["a & b;", "(& a b)"],
    ["a(b);", "(call a b)"],
    ["T (x);", "(declare (x T))"],
    ["T (*x);", "(declare (x (pointer T)))"],
    ["T (*x)(T);", "(declare (x (pointer (function [T] T))))"],
    ["a[1];", "(index a 1)"],
    ["T * x = c;", "(declare (x (pointer T) = c))"],
    ["a * b, c;", "(, (* a b) c)"],
    ["T * x, y;", "(declare (x (pointer T)) (y T))"],
    ["a * b * c;", "(* (* a b) c)"],
    ["a * b == c;", "(== (* a b) c)"],
    ["T * (x);", "(declare (x (pointer T)))"],
    ["a * (b);", "(* a b)"],
  ])("%s", (text, expected) => {
    expect(statements("c", text, types)).toEqual([expected]);
    expect(statements("c++", text, types)).toEqual([expected]);
  });

  test.each([
    ["T & x = a;", "(declare (x (reference T) = a))"],
    ["T(a), b++;", "(, (functional T a) (_++ b))"],
    ["T(3);", "(functional T 3)"],
    ["T(a) + 1;", "(+ (functional T a) 1)"],
    ["T{a};", "(compound T (list a))"],
    ["T(a).x;", "(. (functional T a) x)"],
  ])("%s", (text, expected) => {
    expect(statements("c++", text, types)).toEqual([expected]);
  });

  test("an unknown name is a type where a declaration needs it to be one", () => {
    expect(statements("c++", "U x; U *p = q; U &r = *q; U s[3];")).toEqual([
      "(declare (x U))",
      "(declare (p (pointer U) = q))",
      "(declare (r (reference U) = (*_ q)))",
      "(declare (s (array 3 U)))",
    ]);
    expect(statements("c", "u(x); u * 3;")).toEqual(["(call u x)", "(* u 3)"]);
  });
});

describe("a variable with arguments or a function, C++ [dcl.ambig.res]", () => {
  test.each([
    ["T x(a);", "(declare (x T (init() a)))"],
    ["T x(T);", "(declare (x (function [T] T)))"],
    ["T x(a, V);", "(declare (x T (init() a V)))"],
    ["T x();", "(declare (x (function [] T)))"],
    ["T x(3);", "(declare (x T (init() 3)))"],
    ["T x(a * b);", "(declare (x T (init() (* a b))))"],
    ["T x(T * b);", "(declare (x (function [b: (pointer T)] T)))"],
    ["T x(a & b, c);", "(declare (x T (init() (& a b) c)))"],
    ["T x(&a);", "(declare (x T (init() (&_ a))))"],
    // What can be a parameter in parentheses is one.
    ["T x(T(a));", "(declare (x (function [a: T] T)))"],
    ["T x(T(3));", "(declare (x T (init() (functional T 3))))"],
    ["T x((T) a);", "(declare (x T (init() (cast T a))))"],
    ["T x(a), y(b);", "(declare (x T (init() a)) (y T (init() b)))"],
  ])("%s", (text, expected) => {
    expect(tree("c++", `${types} ${text}`)).toBe(expected);
    expect(statements("c++", text, types)).toEqual([expected]);
  });

  test("of constants and of types that nobody declared", () => {
    expect(
      trees("c++", "const int RX = 2, TX = 3; Port port(RX, TX); Port make(Pin, Pin b);").slice(1),
    ).toEqual(["(declare (port Port (init() RX TX)))", "(declare (make (function [Pin, b: Pin] Port)))"]);
  });
});

describe("template arguments and comparisons, C++ [temp.names]", () => {
  const templates =
    "template <typename U, int N> struct R { U u[N]; }; template <typename U> U g(U u) { return u; } int a, b, c, d;";
  test.each([
    ["a < b > (c)", "(> (< a b) c)"],
    ["g<int>(c)", "(call g<int> c)"],
    ["a < b && c > (d)", "(&& (< a b) (> c d))"],
    ["a < b || c > d", "(|| (< a b) (> c d))"],
    ["x.a < b || c > (d)", "(|| (< (. x a) b) (> c d))"],
    ["f(a < b, c > (d))", "(call f (< a b) (> c d))"],
    ["g<R<int, 2>>(c)", "(call g<R<int, 2>> c)"],
    ["a >> b", "(>> a b)"],
    ["R<int, 3>{}", "(compound R<int, 3> (list))"],
    ["sizeof(R<int, 3>)", "(sizeof-type R<int, 3>)"],
    ["(R<int, 3> *) p", "(cast (pointer R<int, 3>) p)"],
  ])("%s", (text, expected) => {
    expect(expression("c++", text, templates)).toBe(expected);
  });

  test("in declarations", () => {
    expect(statements("c++", "R<int, 3> q; R<T, a> w; R<R<int, 1>, 2> *p;", templates)).toEqual([
      "(declare (q R<int, 3>))",
      "(declare (w R<T, a>))",
      "(declare (p (pointer R<R<int, 1>, 2>)))",
    ]);
  });
});

describe("a variable hides a type of the same name, C11 6.2.1", () => {
  test("as far as its block goes", () => {
    const text = "{ T T = 1; (T) - a; T * a; } (T) - a; T * p;";
    const expected = [
      "(block (declare (T T = 1)) (- T a) (* T a))",
      "(cast T (-_ a))",
      "(declare (p (pointer T)))",
    ];
    expect(statements("c", text, types)).toEqual(expected);
    expect(statements("c++", text, types)).toEqual(expected);
  });

  test("as a parameter, within its function", () => {
    const [, , , define, declare] = trees("c", `${types} void f(int T) { T * a; } T * p;`);
    expect(define).toBe("(define f (function [T: int] void) (block (* T a)))");
    expect(declare).toBe("(declare (p (pointer T)))");
  });

  test("in a loop, within the loop", () => {
    expect(statements("c", "for (int T = 0; (T) - a; T++) (T) - b; (T) - c;", types)).toEqual([
      "(for (declare (T int = 0)) (- T a) (_++ T) (- T b))",
      "(cast T (-_ c))",
    ]);
  });

  test("a type declared in a block ends with it", () => {
    expect(statements("c", "{ typedef int L; (L) - a; } (L) - a;", types)).toEqual([
      "(block (declare (L typedef int)) (cast L (-_ a)))",
      "(- L a)",
    ]);
  });

  test("members have names of their own in C (C11 6.2.3)", () => {
    expect(tree("c", `${types} struct s { int T; T x; }; T y;`)).toBe("(declare (y T))");
    expect(tree("c", `${types} struct s { int T; T x; };`)).toBe(
      "(type (struct s (declare (T int)) (declare (x T))))",
    );
  });

  test("a tag is a type behind its keyword in C, and without it in C++", () => {
    const before = "struct S { int x; }; int a;";
    expect(expression("c", "(S) - a", before)).toBe("(- S a)");
    expect(expression("c++", "(S) - a", before)).toBe("(cast S (-_ a))");
    expect(expression("c", "(struct S) - a", before)).toBe("(cast (struct S) (-_ a))");
  });
});

describe("types of classes", () => {
  const before =
    "struct C { enum M { On }; typedef int I; struct N { int x; }; static const int k = 1; void f(); }; struct D : C { void g(); }; int a;";
  test.each([
    ["(C::I) - a", "(cast C::I (-_ a))"],
    ["(C::k) - a", "(- C::k a)"],
    ["(C::On) & a", "(& C::On a)"],
    ["(D::I) - a", "(cast D::I (-_ a))"],
    ["(I) - a", "(- I a)"],
  ])("%s", (text, expected) => {
    expect(expression("c++", text, before)).toBe(expected);
  });

  test("are in scope in member functions, those of derived classes included", () => {
    expect(tree("c++", `${before} void C::f() { (I) - a; N n; }`)).toBe(
      "(define C::f (function [] void) (block (cast I (-_ a)) (declare (n N))))",
    );
    expect(tree("c++", `${before} void D::g() { (I) - a; (k) - a; }`)).toBe(
      "(define D::g (function [] void) (block (cast I (-_ a)) (- k a)))",
    );
  });

  test("are known in bodies of member functions before their declaration, C++ [class.mem]", () => {
    const text = "class A { void f() { S s; (I) - a; E(3); } struct S { }; typedef int I; enum E { P }; };";
    expect(tree("c++", text)).toContain("(block (declare (s S)) (cast I (-_ a)) (functional E 3))");
  });

  test("of namespaces", () => {
    const inside = "namespace n { typedef int I; int v; } int a;";
    expect(expression("c++", "(n::I) - a", inside)).toBe("(cast n::I (-_ a))");
    expect(expression("c++", "(n::v) - a", inside)).toBe("(- n::v a)");
    expect(statements("c++", "n::I * p; n::v * a;", inside)).toEqual([
      "(declare (p (pointer n::I)))",
      "(* n::v a)",
    ]);
  });
});
