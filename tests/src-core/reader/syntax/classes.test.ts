import { describe, expect, test } from "vitest";
import { tree, trees } from "./read.ts";

describe("classes, C++ [class]", () => {
  test.each([
    [
      "class C { public: int a; private: int b = 1, c; };",
      "(type (class C (public) (declare (a int)) (private) (declare (b int = 1) (c int))))",
    ],
    [
      "struct D : public B, private virtual N::C { };",
      "(type (struct D (base public B) (base private virtual N::C) {}))",
    ],
    ["struct S final : B { };", "(type (struct S (base B) {}))"],
    [
      "struct S { S(); S(int n); ~S(); };",
      "(type (struct S (declare (S (function []))) (declare (S (function [n: int]))) (declare (~S (function [])))))",
    ],
    [
      "struct S { explicit S(int n) : B(n), a{1, 2}, b() { go(); } };",
      "(type (struct S (define S (function [n: int] explicit) (member B n) (member a 1 2) (member b) (block (call go)))))",
    ],
    [
      "struct S { S(const S &) = delete; S() = default; virtual void f() = 0; };",
      "(type (struct S (delete S (function [(reference const S)])) (default S (function [])) (pure f (function [] virtual void))))",
    ],
    [
      "struct S { void f() const; void g() override; int h() noexcept; };",
      "(type (struct S (declare (f (function [] const void))) (declare (g (function [] void))) (declare (h (function [] int)))))",
    ],
    [
      "struct S { operator bool() const; operator const char *(); };",
      "(type (struct S (declare (operator bool (function [] const))) (declare (operator const char * (function [])))))",
    ],
    [
      "struct S { int operator[](int i); S &operator=(const S &o); bool operator==(S o) const; };",
      "(type (struct S (declare (operator[] (function [i: int] int))) (declare (operator= (function [o: (reference const S)] (reference S)))) (declare (operator== (function [o: S] const bool)))))",
    ],
    [
      "struct S { int operator()(int a) { return a; } S &operator++(); S operator++(int); };",
      "(type (struct S (define operator() (function [a: int] int) (block (return a))) (declare (operator++ (function [] (reference S)))) (declare (operator++ (function [int] S)))))",
    ],
    [
      "struct S { static const int N = 3; mutable int m; int t[N]; };",
      "(type (struct S (declare (N static const int = 3)) (declare (m mutable int)) (declare (t (array N int)))))",
    ],
    [
      "struct S { enum { P, Q = 4 }; struct In { int z; } in; typedef int I; };",
      "(type (struct S (type (enum P (= Q 4))) (declare (in (struct In (declare (z int))))) (declare (I typedef int))))",
    ],
    [
      "struct S { friend class T; friend void f(S &); using B::g; using I = int; };",
      "(type (struct S (type friend (class T)) (declare (f (function [(reference S)] friend void))) (using B::g) (alias I int)))",
    ],
    ["struct S { void (*cb)(int); };", "(type (struct S (declare (cb (pointer (function [int] void))))))"],
    [
      "struct S { void f(int a = 3, char *p = nullptr); };",
      "(type (struct S (declare (f (function [a: int = 3, p: (pointer char) = nullptr] void)))))",
    ],
  ])("%s", (text, expected) => {
    expect(tree("c++", text)).toBe(expected);
  });

  test("members defined outside", () => {
    const text =
      "struct R { R(); ~R(); int n() const; operator bool() const; static int k; }; R::R() : a(0) { } R::~R() { } int R::n() const { return 1; } R::operator bool() const { return true; } int R::k = 3;";
    expect(trees("c++", text).slice(1)).toEqual([
      "(define R::R (function []) (member a 0) (block))",
      "(define R::~R (function []) (block))",
      "(define R::n (function [] const int) (block (return 1)))",
      "(define R::operator bool (function [] const) (block (return true)))",
      "(declare (R::k int = 3))",
    ]);
  });

  test("members of a class that nobody declared", () => {
    expect(trees("c++", "Foo::Foo(int a) : b(a) { } void Foo::go() { b++; } Foo::~Foo() { }")).toEqual([
      "(define Foo::Foo (function [a: int]) (member b a) (block))",
      "(define Foo::go (function [] void) (block (_++ b)))",
      "(define Foo::~Foo (function []) (block))",
    ]);
  });
});

describe("templates, C++ [temp]", () => {
  test.each([
    [
      "template <typename T, unsigned char N> class Ring { T items[N]; };",
      "(template [type T, N: unsigned char] (type (class Ring (declare (items (array N T))))))",
    ],
    [
      "template <class T> T max(T a, T b) { return a < b ? b : a; }",
      "(template [type T] (define max (function [a: T, b: T] T) (block (return (? (< a b) b a)))))",
    ],
    [
      "template <typename T = int, int N = 3> struct S;",
      "(template [type T = int, N: int = 3] (type (struct S)))",
    ],
    ["template <> struct S<int> { };", "(template [] (type (struct S<int> {})))"],
    [
      "template <typename T> void R<T>::f() { T t; }",
      "(template [type T] (define R<T>::f (function [] void) (block (declare (t T)))))",
    ],
    ["template <typename T> using P = T *;", "(template [type T] (alias P (pointer T)))"],
    [
      "template <typename T> constexpr T pi = T(3);",
      "(template [type T] (declare (pi constexpr T = (functional T 3))))",
    ],
  ])("%s", (text, expected) => {
    expect(tree("c++", text)).toBe(expected);
  });
});

describe("namespaces, linkage, aliases", () => {
  test.each([
    ["namespace a { int x; }", "(namespace a (declare (x int)))"],
    ["namespace { int x; }", "(namespace (declare (x int)))"],
    ["namespace a::b { int x; }", "(namespace a::b (declare (x int)))"],
    ["inline namespace v1 { int x; }", "(inline-namespace v1 (declare (x int)))"],
    ["namespace short_name = a::b;", "(namespace-alias short_name a::b)"],
    ["namespace c = ::a;", "(namespace-alias c ::a)"],
    [
      'extern "C" { void f(void); int x; }',
      "(linkage C (declare (f (function [void] void))) (declare (x int)))",
    ],
    ['extern "C" void f(void) { }', "(linkage C (define f (function [void] void) (block)))"],
    ["using u8 = unsigned char;", "(alias u8 unsigned char)"],
    ["using handler = void (*)(int);", "(alias handler (pointer (function [int] void)))"],
    ["using namespace std;", "(using-namespace std)"],
    ["using std::min;", "(using std::min)"],
  ])("%s", (text, expected) => {
    expect(tree("c++", text)).toBe(expected);
  });
});

describe("declarations of C++", () => {
  test.each([
    [
      "enum class Mode : unsigned char { Idle, Busy = 3 };",
      "(type (enum-class Mode : unsigned char Idle (= Busy 3)))",
    ],
    ["enum E : long;", "(type (enum E))"],
    ["enum : unsigned char { A };", "(type (enum : unsigned char A))"],
    [
      "int x(3), y{4}, *p(&x);",
      "(declare (x int (init() 3)) (y int (init{} 4)) (p (pointer int) (init() (&_ x))))",
    ],
    ["void f(int (&a)[3]);", "(declare (f (function [a: (reference (array 3 int))] void)))"],
    [
      'long operator""_ms(unsigned long long n);',
      '(declare (operator""_ms (function [n: unsigned long long] long)))',
    ],
    ["template class R<int>;", "(empty)"],
    ["constexpr int k = 3;", "(declare (k constexpr int = 3))"],
    ["int &r = x;", "(declare (r (reference int) = x))"],
    ["int &&r = 3;", "(declare (r (rvalue-reference int) = 3))"],
    ["int t[] { 1, 2 };", "(declare (t (array ? int) (init{} 1 2)))"],
    ["auto f(int a) -> int { return a; }", "(define f (function [a: int] int) (block (return a)))"],
    ["void f() noexcept(true);", "(declare (f (function [] void)))"],
    ["void f() throw();", "(declare (f (function [] void)))"],
    [
      "inline V operator+(const V &a, const V &b) { return a; }",
      "(define operator+ (function [a: (reference const V), b: (reference const V)] inline V) (block (return a)))",
    ],
    ["void f(int, char * = 0);", "(declare (f (function [int, (pointer char) = 0] void)))"],
    ["decltype(a + b) c;", "(declare (c (typeof (+ a b))))"],
    ["static auto x = 1;", "(declare (x static auto = 1))"],
    ["typename T::I x;", "(declare (x T::I))"],
    ["void *operator new(size_t n);", "(declare (operator new (function [n: size_t] (pointer void))))"],
  ])("%s", (text, expected) => {
    expect(tree("c++", text)).toBe(expected);
  });
});
