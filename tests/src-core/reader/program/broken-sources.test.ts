import { describe, expect, test } from "vitest";
import { constantProblems } from "../../../../src-core/reader/constants/unit-problems.ts";
import type { Program } from "../../../../src-core/reader/program/program.ts";
import { ProgramCache } from "../../../../src-core/reader/program/program-cache.ts";
import { symbolAt } from "../../../../src-core/reader/program/symbol-queries.ts";
import { walkUnit } from "../../../../src-core/reader/typed/walk.ts";
import { readFiles } from "./read-files.ts";

const source = `
#include <stdint.h>
#define BIT(n) (1 << (n))
enum class Mode : uint8_t { Stream = 0xEA, Remote };
template <typename T, uint8_t N> class Ring {
public:
  bool push(T value) { if (used >= N) return false; items[used++] = value; return true; }
private:
  T items[N]; uint8_t used = 0;
};
struct Report { uint8_t left : 1, right : 1; int8_t x, y; Report operator+(const Report &o) const; operator bool() const; };
namespace wire { constexpr long baud = 1200; static const uint8_t table[] = { 0xF4, [2] = 0xF3, }; }
class Port { public: Port(int pin = 2) : pin_(pin) {} virtual void send(uint8_t b) = 0; int pin_; };
class Line : public Port { using Port::Port; void send(uint8_t b) override { pin_ = b ? 1 : 0; } };
Ring<Report, 8> ring; Line line(3); static volatile uint8_t flags;
constexpr int divisor(long hz) { int n = 0; while (hz > 16) { hz -= 16; if (++n > 9) break; } return n; }
static int steps[divisor(100)];
void setup() { auto f = [&](int v) -> long { return v * wire::baud; }; for (auto &s : steps) s = f(BIT(3)) + sizeof(steps[0]); }
void loop() { switch (flags) { case 1 ... 3: flags |= BIT(7); break; default: ring.push({1, 0, -1, 5}); } do { flags--; } while (flags); }
`;

/** Asks everything of a program that can be asked. */
function askAll(program: Program): number {
  let seen = 0;
  for (const unit of program.units) {
    walkUnit(unit.typed, {
      expression() {
        seen += 1;
        return true;
      },
    });
    constantProblems(unit.typed);
    symbolAt(unit, "main.cpp", 40);
  }
  return seen;
}

const read = async (text: string, cache: ProgramCache) =>
  askAll(await readFiles({ "main.cpp": text }, cache));

function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state / 0x80000000;
  };
}

describe("broken sources give less knowledge and no exception", () => {
  test("the whole is understood", async () => {
    const program = await readFiles({ "main.cpp": source });
    expect(program.problems).toEqual([]);
    expect(askAll(program)).toBeGreaterThan(80);
  });

  test("prefixes", async () => {
    const cache = new ProgramCache();
    for (let end = 0; end < source.length; end += 9) {
      expect(await read(source.slice(0, end), cache)).toBeGreaterThanOrEqual(0);
    }
  });

  test("words taken out, doubled and changed", async () => {
    const random = randomFrom(7);
    const cache = new ProgramCache();
    const words = source.match(/\w+|\s+|[^\w\s]/g) ?? [];
    for (let round = 0; round < 150; round += 1) {
      const broken = [...words];
      for (let change = 0; change < 1 + random() * 6; change += 1) {
        const at = Math.floor(random() * broken.length);
        const other = words[Math.floor(random() * words.length)] ?? "";
        const choice = random();
        if (choice < 0.4) broken.splice(at, 1);
        else if (choice < 0.7) broken.splice(at, 0, other);
        else broken[at] = other;
      }
      expect(await read(broken.join(""), cache)).toBeGreaterThanOrEqual(0);
    }
  });

  test("what needs the next one, three thousand times", async () => {
    const chain = (line: (index: number) => string) =>
      Array.from({ length: 3_000 }, (_, index) => line(index)).join("\n");
    const constants = chain(
      (index) => `extern const int c${index + 1}; const int c${index} = c${index + 1} + 1;`,
    );
    expect(await read(`${constants}\nint a[c0];`, new ProgramCache())).toBeGreaterThan(0);
    const functions = chain((index) => `auto f${index}() { return f${index + 1}(); }`);
    expect(await read(functions, new ProgramCache())).toBeGreaterThan(0);
  });

  test("words in no order", async () => {
    const random = randomFrom(11);
    const words = source.match(/\w+|[^\w\s]/g) ?? [];
    for (let round = 0; round < 40; round += 1) {
      const soup = Array.from({ length: 120 }, () => words[Math.floor(random() * words.length)] ?? "");
      expect(await read(soup.join(" "), new ProgramCache())).toBeGreaterThanOrEqual(0);
    }
  });

  test.each([
    "typedef T T; T x; struct S { struct S s; } s; S operator+(S, S); int y = s + s;",
    "using namespace a; namespace a { using namespace b; } namespace b { using namespace a; } int x = c;",
    "template <class T> struct A : A<A<T>> { T t; }; A<int> a; int x = a.t;",
    "struct A : A { int x; }; A a; int y = a.z; struct B; struct C : B {}; C c; int z = c.q;",
    "class A : B {}; class B : A { int x; }; B b; int y = b.x + b.nothing;",
    "struct B; struct A { A(const B &b); A(int); operator B() const; }; struct B { B(const A &a); operator A(); }; void f(A a); void g(B b) { f(b); f(5); A a = b; a + b; }",
    "constexpr int f(int n) { return f(n + 1); } int a[f(0)]; auto g() { return g(); } int b = g();",
    "auto x = x; const int y = z, z = y; int a[sizeof a]; enum { E = E + 1 }; int b[-5]; int c[1e9];",
    "struct { int : 99; int x : -1; int y : 70; } s; int v = s.x; int w = 1 << 99999999999; int u = 1 % 0;",
    "int x = (((((((((((((1)))))))))))); int f() { return { { { 1 } } }; } int a[] = { { { { 5 } } } };",
    "template <int N> int f() { return f<N + 1>(); } int x = f<0>(); template <class... T> void g(T... t); int y = (g(1, 2), 3);",
  ])("%s", async (text) => {
    expect(await read(text, new ProgramCache())).toBeGreaterThanOrEqual(0);
  });
});
