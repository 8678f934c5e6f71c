import { describe, expect, test } from "vitest";
import { typeText } from "../../../../src-core/reader/types/text.ts";
import { expressionIn } from "./type-source.ts";

const declarations = `
unsigned char byte; signed char delta; unsigned int word; unsigned long counter; float ratio;
unsigned char buf[4]; unsigned char *cursor; const char *name; void *any;
struct point { signed char x; int y; } p; struct point *pp; const struct point cp;
struct flags { unsigned a : 3; unsigned b : 16; } f;
int add(int a, long b); void run(void); int (*handler)(int);
enum dir { UP, DOWN } dir; volatile unsigned char reg;
`;

const typeOf = async (expression: string, language: "c" | "c++" = "c"): Promise<string> =>
  typeText((await expressionIn(declarations, expression, language)).type);

describe("types of expressions on AVR", () => {
  test.each([
    // C11 6.3.1.1, 6.3.1.8: operands narrower than int become int
    ["byte + byte", "int"],
    ["byte << 8", "int"],
    ["-delta", "int"],
    ["~byte", "int"],
    ["byte + word", "unsigned int"],
    ["word * 2L", "long"],
    ["word + counter", "unsigned long"],
    ["counter * ratio", "float"],
    ["byte * 1.0", "double"],
    ["f.a + 1", "int"],
    ["f.b + 1", "unsigned int"],
    // 6.5.7p3: the type of a shift is that of its left operand
    ["byte << 8L", "int"],
    ["1UL << byte", "unsigned long"],
    // 6.5.8p6, 6.5.3.3p5, 6.5.13p3
    ["word < counter", "int"],
    ["!counter", "int"],
    ["byte && counter", "int"],
    // 6.5.2.1, 6.5.2.3, 6.5.3.2
    ["buf[1]", "unsigned char"],
    ["1[buf]", "unsigned char"],
    ["*cursor", "unsigned char"],
    ["&byte", "unsigned char *"],
    ["&buf", "unsigned char (*)[4]"],
    ["p.x", "signed char"],
    ["pp->y", "int"],
    ["cp.y", "const int"],
    ["&cp.x", "const signed char *"],
    // 6.5.6p8, p9
    ["cursor + 1", "unsigned char *"],
    ["buf + 1", "unsigned char *"],
    ["1 + cursor", "unsigned char *"],
    ["cursor - buf", "int"],
    // 6.5.15p5, p6
    ["byte ? byte : delta", "int"],
    ["byte ? 1 : 2UL", "unsigned long"],
    ["byte ? cursor : 0", "unsigned char *"],
    ["byte ? cursor : any", "void *"],
    // 6.5.16p3: the unqualified type of the left operand
    ["byte = 5", "unsigned char"],
    ["reg |= 1", "unsigned char"],
    ["byte++", "unsigned char"],
    // 6.5.2.2p5
    ["add(1, 2)", "int"],
    ["run()", "void"],
    ["handler(1)", "int"],
    ["(*handler)(1)", "int"],
    // 6.7.2.2p3, 6.5.3.4p5, 6.5.4
    ["UP", "int"],
    ["sizeof byte", "unsigned int"],
    ["(unsigned char)counter", "unsigned char"],
    ["(byte, counter)", "unsigned long"],
    ['"ab"', "char [3]"],
    ["(struct point){ 1, 2 }", "point"],
    ["({ int t = byte; t + 1L; })", "long"],
  ])("%s is %s", async (expression, type) => {
    expect(await typeOf(expression)).toBe(type);
  });

  test.each([
    // C++11 5.9p1, 5.3.1p9, 5.14p2
    ["word < counter", "bool"],
    ["!counter", "bool"],
    ["'a'", "char"],
    ['"ab"', "const char [3]"],
    ["UP", "dir"],
    ["byte ? byte : byte", "unsigned char"],
    ["true", "bool"],
    ["static_cast<unsigned char>(word)", "unsigned char"],
  ])("%s is %s in C++", async (expression, type) => {
    expect(await typeOf(expression, "c++")).toBe(type);
  });
});

describe("implicit conversions are written out", () => {
  test("both operands of an arithmetic operator have its type", async () => {
    const sum = await expressionIn(declarations, "byte + word");
    expect(sum).toMatchObject({
      kind: "arithmetic",
      operator: "+",
      left: { kind: "convert", reason: "arithmetic", operand: { kind: "variable" } },
      right: { kind: "variable" },
    });
  });

  test("assignment converts to the target's type (C11 6.5.16.1p2)", async () => {
    expect(await expressionIn(declarations, "byte = word")).toMatchObject({
      kind: "assign",
      value: { kind: "convert", reason: "assignment", type: { bits: 8 } },
    });
  });

  test("arguments convert to the parameters' types (C11 6.5.2.2p7), others are promoted (p6)", async () => {
    expect(await expressionIn(declarations, "add(byte, byte)")).toMatchObject({
      kind: "call",
      arguments: [
        { kind: "convert", reason: "argument", type: { name: "int" } },
        { kind: "convert", reason: "argument", type: { name: "long" } },
      ],
    });
    expect(
      await expressionIn(
        "int print(const char *, ...); unsigned char byte; float ratio;",
        'print("", byte, ratio)',
      ),
    ).toMatchObject({
      arguments: [
        { kind: "convert" },
        { kind: "convert", reason: "promotion", type: { name: "int" } },
        { kind: "convert", type: { name: "double" } },
      ],
    });
  });

  test("an array used as a value decays (C11 6.3.2.1p3), under sizeof and & it does not", async () => {
    expect(await expressionIn(declarations, "cursor = buf")).toMatchObject({
      value: { kind: "convert", reason: "decay", operand: { kind: "variable" } },
    });
    expect(await expressionIn(declarations, "sizeof buf")).toMatchObject({ kind: "integer", value: 4n });
  });

  test("compound assignment computes in the common type (C11 6.5.16.2p3)", async () => {
    expect(await expressionIn(declarations, "byte += word")).toMatchObject({
      kind: "compound-assign",
      operator: "+",
      computeIn: { name: "unsigned int" },
      type: { name: "unsigned char" },
    });
  });
});

describe("registers", () => {
  test("a register macro is a dereferenced cast of a number", async () => {
    expect(await expressionIn("", "*(volatile unsigned int *)(0xC4) = 832")).toMatchObject({
      kind: "assign",
      target: {
        kind: "dereference",
        lvalue: true,
        type: { volatile: true, bits: 16 },
        operand: { kind: "convert", style: "c", operand: { kind: "integer", value: 0xc4n } },
      },
    });
  });
});

describe("what is not known", () => {
  test("undeclared names and calls keep their spelling and arguments", async () => {
    expect(await expressionIn("", "Serial1.begin(1200, SERIAL_7N1)")).toMatchObject({
      kind: "unresolved",
      name: "Serial1.begin",
      form: "call",
      operands: [
        { kind: "integer", value: 1200n },
        { kind: "unresolved", name: "SERIAL_7N1", form: "name" },
      ],
    });
    expect(await expressionIn("", "nowhere::here + 1", "c++")).toMatchObject({
      kind: "arithmetic",
      left: { kind: "unresolved", name: "nowhere::here" },
      type: { kind: "unknown" },
    });
  });

  test("an unknown type takes nothing else with it", async () => {
    expect(await expressionIn("Thing thing; int n;", "n + 1", "c++")).toMatchObject({
      type: { name: "int" },
    });
    expect(await expressionIn("Thing thing;", "thing.read(5)", "c++")).toMatchObject({
      kind: "unresolved",
      name: "thing.read",
      operands: [{ value: 5n }],
    });
  });
});
