import { describe, expect, test } from "vitest";
import { addressOf } from "../../../../src-core/reader/constants/address.ts";
import { evaluate } from "../../../../src-core/reader/constants/evaluate.ts";
import { avrModel, ilp32Model } from "../../../../src-core/reader/types/data-models.ts";
import { expressionIn } from "../typed/type-source.ts";

const valueIn = async (
  declarations: string,
  expression: string,
  language: "c" | "c++" = "c",
  model = avrModel,
) => {
  const value = evaluate(await expressionIn(declarations, expression, language, model), model);
  return value.kind === "integer" ? value.value : value.kind === "floating" ? value.value : value.kind;
};

describe("constants (C11 6.6; sizes of AVR)", () => {
  test.each([
    ["60 * 1000", -5536n],
    ["60L * 1000", 60000n],
    ["16000000UL / 16 / 1200 - 1", 832n],
    ["(unsigned char)832", 64n],
    ["1 ? -1 : 0u", 65535n],
    ["-1 < 1u", 0n],
    ["sizeof(int) - 3 > 0", 1n],
    ["0 && (1 / 0)", 0n],
    ["1 || (1 / 0)", 1n],
    ["(signed char)0xF4", -12n],
    ["'a' == 97", 1n],
    ["~0u >> 8", 255n],
  ])("%s is %s", async (expression, value) => {
    expect(await valueIn("", expression)).toBe(value);
  });

  test("the same where int has 32 bits", async () => {
    expect(await valueIn("", "60 * 1000", "c", ilp32Model)).toBe(60000n);
    expect(await valueIn("", "1 << 16", "c", ilp32Model)).toBe(65536n);
  });
});

describe("objects that keep their first value", () => {
  const table = `
const unsigned char commands[] = { 0xFF, 0xF3, 0xE8 };
static const struct { int rate; char name[4]; unsigned a : 3; } setups[] = { { 40, "M3", 5 }, { .rate = 200 } };
const int rate = 40; int changing = 5; volatile const int hardware = 5; extern const int elsewhere;
`;
  test.each([
    ["commands[1]", 0xf3n],
    ["*(commands + 2)", 0xe8n],
    ["setups[1].rate", 200n],
    ["setups[0].name[1]", 0x33n],
    ["setups[0].name[3]", 0n],
    ["setups[0].a", 5n],
    ["setups[1].a", 0n],
    ["rate * 2", 80n],
    ["*&rate", 40n],
    ["commands[3]", "unknown"],
    ["changing", "unknown"],
    ["hardware", "unknown"],
    ["elsewhere", "unknown"],
  ])("%s is %s", async (expression, value) => {
    expect(await valueIn(table, expression)).toBe(value);
  });

  test("an environment says what a variable holds", async () => {
    const expression = await expressionIn("int n;", "n * 3");
    if (expression.kind !== "arithmetic" || expression.left.kind !== "variable")
      throw new Error(expression.kind);
    const { variable } = expression.left;
    const held = {
      kind: "integer",
      value: 7n,
      type: { kind: "integer", rank: "int", bits: 16, signed: true, name: "int" },
    } as const;
    expect(evaluate(expression, avrModel, new Map([[variable, held]]))).toMatchObject({ value: 21n });
    expect(evaluate(expression, avrModel).kind).toBe("unknown");
  });
});

describe("functions made of plain statements", () => {
  const functions = `
constexpr int factorial(int n) { return n <= 1 ? 1 : n * factorial(n - 1); }
constexpr int ones(unsigned v) { int n = 0; for (; v; v >>= 1) n += v & 1; return n; }
constexpr int forever(int n) { while (true) { n++; } return n; }
int impure(int n) { static int calls; calls++; return n; }
constexpr int itself(int n) { return itself(n); }
`;
  test.each([
    ["factorial(6)", 720n],
    ["ones(0xF4)", 5n],
    ["forever(1)", "unknown"],
    ["impure(1)", "unknown"],
    ["itself(1)", "unknown"],
  ])("%s is %s", async (expression, value) => {
    expect(await valueIn(functions, expression, "c++")).toBe(value);
  });

  test("a constant that depends on itself is not known", async () => {
    expect(await valueIn("extern const int a; const int b = a + 1; const int a = b + 1;", "a")).toBe(
      "unknown",
    );
  });
});

describe("addresses", () => {
  const registers = `
struct usart { unsigned char status, control[3]; unsigned int baud; };
`;
  test.each([
    ["*(volatile unsigned char *)(0xC4)", 0xc4],
    ["(*(volatile unsigned char *)((0x04) + 0x20))", 0x24],
    ["((struct usart *)0x800)->baud", 0x804],
    ["((struct usart *)0x800)->control[2]", 0x803],
    ["(*(struct usart *)0x800).status", 0x800],
    ["((volatile unsigned char *)0x20)[5]", 0x25],
  ])("%s is at %i", async (expression, address) => {
    expect(addressOf(await expressionIn(registers, expression), avrModel)).toBe(address);
  });

  test("objects have none before linking", async () => {
    expect(addressOf(await expressionIn("int x;", "x"), avrModel)).toBeUndefined();
    expect(await valueIn("int x;", "&x")).toBe("address");
    expect(await valueIn("int x[4];", "&x[3] - &x[1]")).toBe(2n);
    expect(await valueIn("int x;", "&x != 0")).toBe(1n);
  });
});
