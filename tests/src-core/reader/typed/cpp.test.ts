import { describe, expect, test } from "vitest";
import { typeText } from "../../../../src-core/reader/types/text.ts";
import { expressionIn, functionNamed, typeSource, variableNamed } from "./type-source.ts";

const typed = (declarations: string, expression: string) => expressionIn(declarations, expression, "c++");

describe("classes", () => {
  const mouse = `
class Mouse {
public:
  Mouse(uint8_t clock, uint8_t data) : clock_(clock), data_(data) {}
  void begin(long wait = 100);
  bool read(int &x) const { return clock_ > 0 && step(x); }
  static int count;
  enum Mode { STREAM, REMOTE };
private:
  bool step(int x) const;
  uint8_t clock_, data_;
};
Mouse mouse(2, 3);
void Mouse::begin(long wait) { clock_ = wait; }
int Mouse::count = 1;
`;

  test("a method call has its object and converted arguments, defaults filled in", async () => {
    expect(await typed(mouse, "mouse.begin()")).toMatchObject({
      kind: "method-call",
      object: { kind: "variable", variable: { name: "mouse" } },
      method: { qualifiedName: "Mouse::begin" },
      arguments: [{ kind: "convert", type: { name: "long" }, operand: { value: 100n } }],
    });
  });

  test("construction chooses the constructor", async () => {
    const unit = await typeSource(mouse, "c++");
    expect(variableNamed(unit, "mouse").initializer).toMatchObject({
      kind: "constructor",
      constructor: { special: "constructor", qualifiedName: "Mouse::Mouse" },
      arguments: [{ kind: "convert" }, { kind: "convert" }],
    });
  });

  test("definitions outside the class are the class's", async () => {
    const unit = await typeSource(mouse, "c++");
    const begin = functionNamed(unit, "begin");
    expect(begin.memberOf?.name).toBe("Mouse");
    expect(begin.definition?.body.statements[0]).toMatchObject({
      expression: {
        kind: "assign",
        target: { kind: "member", field: { name: "clock_" }, object: { kind: "dereference" } },
      },
    });
    expect(variableNamed(unit, "count")).toMatchObject({ qualifiedName: "Mouse::count", storage: "global" });
    expect(unit.variables.filter(({ name }) => name === "count")).toHaveLength(1);
  });

  test("member initialisers find their fields", async () => {
    const unit = await typeSource(mouse, "c++");
    const made = unit.functions.find((symbol) => symbol.special === "constructor");
    expect(made?.definition?.memberInitializers.map(({ target }) => target?.name)).toEqual([
      "clock_",
      "data_",
    ]);
  });

  test("members through :: and static members", async () => {
    expect(await typed(mouse, "Mouse::REMOTE")).toMatchObject({
      kind: "enumerator",
      enumerator: { value: 1n },
    });
    expect(await typed(mouse, "Mouse::count")).toMatchObject({ kind: "variable", type: { name: "int" } });
  });

  test("inheritance: fields of the base, virtual calls, conversion to the base", async () => {
    const port = `
struct Port { int speed; virtual void send(int b); };
struct Usart : Port { int number; void send(int b) override; };
Usart usart; void use(Port &port);
`;
    expect(await typed(port, "usart.speed")).toMatchObject({
      kind: "member",
      field: { name: "speed" },
      object: { kind: "convert", reason: "base", lvalue: true },
    });
    expect(await typed(port, "usart.send(1)")).toMatchObject({ kind: "method-call", virtual: true });
    expect(await typed(port, "use(usart)")).toMatchObject({
      arguments: [{ kind: "convert", reason: "base", type: { record: { name: "Port" } } }],
    });
  });

  test("operators (C++11 13.5)", async () => {
    const fixed = `
struct Fixed { int raw; Fixed(int v) : raw(v) {} Fixed operator+(const Fixed &o) const; operator bool() const;
  Fixed &operator+=(int v); int operator[](int i) const; };
bool operator==(const Fixed &a, const Fixed &b);
Fixed a(1), b(2);
`;
    expect(await typed(fixed, "a + b")).toMatchObject({ kind: "method-call", method: { name: "operator+" } });
    expect(await typed(fixed, "a == b")).toMatchObject({
      kind: "call",
      callee: { function: { name: "operator==" } },
    });
    expect(await typed(fixed, "a += 3")).toMatchObject({ kind: "method-call", lvalue: true });
    expect(await typed(fixed, "a[1]")).toMatchObject({ kind: "method-call", type: { name: "int" } });
    expect(await typed(fixed, "a ? 1 : 2")).toMatchObject({ condition: { kind: "method-call" } });
    expect(await typed(fixed, "a + 5")).toMatchObject({ arguments: [{ kind: "construct" }] });
  });
});

describe("overloads (C++11 13.3)", () => {
  const print = `
void put(char c); void put(int n); void put(unsigned long n, int base = 10); void put(const char *s); void put(double d);
unsigned char byte; unsigned word; float ratio; char text[4];
`;
  test.each([
    ["put('a')", "char"],
    ["put(5)", "int"],
    ["put(byte)", "int"],
    ["put(5UL)", "unsigned long"],
    ["put(5UL, 16)", "unsigned long"],
    ['put("abc")', "const char *"],
    ["put(text)", "const char *"],
    ["put(1.5)", "double"],
    ["put(ratio)", "double"],
  ])("%s takes %s", async (call, parameter) => {
    const expression = await typed(print, call);
    if (expression.kind !== "call" || expression.callee.kind !== "function") throw new Error(expression.kind);
    const [first] = expression.callee.function.type.parameters;
    expect(first && typeText(first)).toBe(parameter);
  });
});

describe("names", () => {
  test("namespaces, using, aliases", async () => {
    const wire =
      "namespace wire { const int pin = 7; namespace in { long wait; } } using namespace wire; using wire::in::wait; namespace w2 { using wire::pin; }";
    expect(await typed(wire, "wire::pin")).toMatchObject({ kind: "variable" });
    expect(await typed(wire, "pin")).toMatchObject({ variable: { qualifiedName: "wire::pin" } });
    expect(await typed(wire, "wait")).toMatchObject({ type: { name: "long" } });
    expect(await typed(`using byte_t = unsigned char; byte_t b;`, "b")).toMatchObject({
      type: { name: "byte_t" },
    });
  });

  test("enum class keeps its type and does not convert", async () => {
    const mode = "enum class Mode : uint8_t { Stream = 0xEA, Remote };";
    expect(await typed(mode, "Mode::Remote")).toMatchObject({
      kind: "enumerator",
      enumerator: { value: 0xebn },
      type: { kind: "enumeration" },
    });
    expect(await typed(mode, "(uint8_t)Mode::Stream")).toMatchObject({ kind: "convert", type: { bits: 8 } });
  });

  test("references name the object they are bound to", async () => {
    expect(await typed("int v; int &r = v;", "r")).toMatchObject({
      kind: "variable",
      lvalue: true,
      type: { name: "int" },
    });
  });
});

describe("templates", () => {
  test("functions are instantiated by what their arguments are", async () => {
    const source = "template <class T> T larger(T a, T b) { return a > b ? a : b; }";
    expect(typeText((await typed(source, "larger(1L, 2L)")).type)).toBe("long");
    expect(typeText((await typed(source, "larger<uint8_t>(1, 2)")).type)).toBe("uint8_t");
    expect((await typed(source, "larger(1, 2L)")).kind).toBe("unresolved");
  });

  test("classes are instantiated by their arguments", async () => {
    const ring = `
template <typename T, uint8_t N> class Ring {
public:
  bool push(T value);
  T pop() { return items[--used]; }
  static const uint8_t capacity = N;
private:
  T items[N]; uint8_t used = 0;
};
template <typename T, uint8_t N> bool Ring<T, N>::push(T value) { items[used++] = value; return true; }
Ring<uint16_t, 8> ring;
`;
    const unit = await typeSource(ring, "c++");
    const { type } = variableNamed(unit, "ring");
    expect(type).toMatchObject({ kind: "record", record: { name: "Ring<uint16_t, 8>", size: 17 } });
    expect(typeText((await typed(ring, "ring.pop()")).type)).toBe("uint16_t");
    expect(await typed(ring, "ring.push(5)")).toMatchObject({
      kind: "method-call",
      method: { name: "push" },
    });
    expect(functionNamed(unit, "push").definition?.body.statements).toHaveLength(2);
  });

  test("a template that never ends is given up", async () => {
    const unit = await typeSource("template <int N> struct Deep { Deep<N + 1> next; }; Deep<0> deep;", "c++");
    expect(variableNamed(unit, "deep").type.kind).toBe("record");
  });
});

describe("statements of C++", () => {
  test("range-for over an array", async () => {
    const unit = await typeSource("uint8_t buf[3]; void f() { for (auto &b : buf) b = 0; }", "c++");
    const body = functionNamed(unit, "f").definition?.body;
    expect(body?.statements[0]).toMatchObject({ kind: "range-for", variable: { name: "b" } });
    expect(unit.locals.map(({ type }) => typeText(type))).toEqual(["uint8_t &"]);
  });

  test("a condition that declares", async () => {
    const unit = await typeSource("int read(); void f() { if (int n = read()) { n++; } }", "c++");
    expect(functionNamed(unit, "f").definition?.body.statements[0]).toMatchObject({
      kind: "if",
      init: { kind: "variables" },
      condition: { kind: "variable", variable: { name: "n" } },
    });
  });

  test("lambdas", async () => {
    const unit = await typeSource(
      "void attach(void (*f)(int)); int n; void f() { attach([](int x) { n = x; }); auto twice = [](int x) { return 2L * x; }; twice(4); }",
      "c++",
    );
    const statements = functionNamed(unit, "f").definition?.body.statements;
    expect(statements?.[0]).toMatchObject({
      expression: {
        arguments: [{ kind: "convert", type: { kind: "pointer" }, operand: { kind: "lambda" } }],
      },
    });
    expect(statements?.[2]).toMatchObject({ expression: { kind: "call", type: { name: "long" } } });
  });
});
