import { describe, expect, test } from "vitest";
import { declarationText } from "../../../../src-core/reader/types/text.ts";
import { functionNamed, typeSource, variableNamed } from "./type-source.ts";

const declared = async (source: string, name: string, language: "c" | "c++" = "c"): Promise<string> => {
  const unit = await typeSource(source, language);
  const variable = variableNamed(unit, name);
  return declarationText(variable.type, variable.name);
};

describe("declarators (C11 6.7.6)", () => {
  test.each([
    ["int *a[3];", "a", "int *a[3]"],
    ["int (*a)[3];", "a", "int (*a)[3]"],
    ["int *(*f)(int *, char);", "f", "int *(*f)(int *, char)"],
    ["volatile unsigned char * const reg = 0;", "reg", "volatile unsigned char *const reg"],
    ["int m[2][3];", "m", "int m[2][3]"],
    ["unsigned long int long x;", "x", "unsigned long long x"],
    ["typedef unsigned char byte_t; byte_t b[4];", "b", "byte_t b[4]"],
    ["enum { N = 5 }; char buf[N * 2];", "buf", "char buf[10]"],
    ["uint8_t x;", "x", "uint8_t x"],
    ["const int a = 1, *b = &a;", "b", "const int *b"],
  ])("%s", async (source, name, text) => {
    expect(await declared(source, name)).toBe(text);
  });

  test("an array takes its length from its initialiser (C11 6.7.9p22)", async () => {
    expect(await declared('char s[] = "M3";', "s")).toBe("char s[3]");
    expect(await declared("int t[] = { 1, 2, [5] = 3 };", "t")).toBe("int t[6]");
    expect(await declared("struct p { char x, y; }; struct p t[] = { 1, 2, 3, 4 };", "t")).toBe("p t[2]");
  });

  test("auto (C++11 7.1.6.4)", async () => {
    expect(await declared("auto x = 1UL;", "x", "c++")).toBe("unsigned long x");
    expect(await declared("int v; const auto &r = v;", "r", "c++")).toBe("const int &r");
    expect(await declared("char s[3]; auto p = s;", "p", "c++")).toBe("char *p");
  });

  test("parameters that are arrays are pointers (C11 6.7.6.3p7)", async () => {
    const unit = await typeSource("void send(const char text[], int n);");
    expect(declarationText(functionNamed(unit, "send").type, "send")).toBe("void send(const char *, int)");
  });
});

describe("scopes (C11 6.2.1)", () => {
  test("inner declarations hide outer ones until their block ends", async () => {
    const unit = await typeSource("int x; void f(void) { x = 1; { char x; x = 2; } x = 3; }");
    const outer = variableNamed(unit, "x");
    const used = unit.references.filter(({ target }) => "kind" in target && target === outer);
    expect(used).toHaveLength(3);
    expect(unit.locals.map((variable) => variable.name)).toEqual(["x"]);
  });

  test("storage", async () => {
    const unit = await typeSource(
      "int a; static int b; extern int c; void f(int d) { static int e; int g; }",
    );
    const storage = [...unit.variables, ...unit.locals].map(({ name, storage }) => [name, storage]);
    expect(storage).toEqual([
      ["a", "global"],
      ["b", "file"],
      ["c", "global"],
      ["e", "static-local"],
      ["g", "local"],
    ]);
    expect(functionNamed(unit, "f").definition?.parameters).toMatchObject([
      { name: "d", storage: "parameter" },
    ]);
  });

  test("several declarations are one object (C11 6.2.2p2)", async () => {
    const unit = await typeSource("extern int x; int x = 5; int f(int); int f(int a) { return a; }");
    expect(unit.variables).toHaveLength(1);
    expect(variableNamed(unit, "x").declarations).toHaveLength(2);
    expect(functionNamed(unit, "f").declarations).toHaveLength(2);
    expect(functionNamed(unit, "f").definition).toBeDefined();
  });

  test("functions are seen before their definition, as in a sketch", async () => {
    const unit = await typeSource("void loop() { pump(3); } int pump(int n) { return n; }", "c++");
    const body = functionNamed(unit, "loop").definition?.body;
    expect(body?.statements[0]).toMatchObject({
      kind: "expression",
      expression: { kind: "call", callee: { kind: "function", function: { name: "pump" } } },
    });
  });
});

test("interrupt handlers carry their vector", async () => {
  const unit = await typeSource(
    "#define INT0_vect __vector_1\n" +
      "#define ISR(vector) void vector(void) __attribute__((signal, used)); void vector(void)\n" +
      "ISR(INT0_vect) { }\nvoid plain(void) { }",
  );
  expect(unit.functions.map(({ vector }) => vector)).toEqual(["INT0_vect", undefined]);
});

test("program memory", async () => {
  const unit = await typeSource('const char t[] __attribute__((__progmem__)) = "M"; const char u[] = "M";');
  expect(unit.variables.map(({ programMemory }) => programMemory)).toEqual([true, false]);
});

test("linkage: static is the unit's own (C11 6.2.2p3), const too in C++ (C++11 3.5p3)", async () => {
  const source = "static int a; int b; const int c = 1; void f(int) {} static void g() {}";
  const names = async (language: "c" | "c++") => {
    const unit = await typeSource(source, language);
    return [...unit.variables, ...unit.functions].map(({ linkageName }) => linkageName);
  };
  expect(await names("c")).toEqual([undefined, "b", "c", "f", undefined]);
  expect(await names("c++")).toEqual([undefined, "b", undefined, "f(int)", undefined]);
});

// "Compatible attribute specifications on distinct declarations of the same function are merged" (manual of gcc,
// "Declaring Attributes of Functions"; from memory).
test("a function has the attributes of all its declarations", async () => {
  const unit = await typeSource(
    "static void f(void);\n__attribute__((noinline)) static void f(void) {}",
    "c",
  );
  expect(functionNamed(unit, "f").attributes.map(({ name }) => name)).toEqual(["noinline"]);
});
