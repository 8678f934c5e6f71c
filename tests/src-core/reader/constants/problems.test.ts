import { describe, expect, test } from "vitest";
import { constantProblems } from "../../../../src-core/reader/constants/unit-problems.ts";
import { typeSource } from "../typed/type-source.ts";

const problemsOf = async (source: string, language: "c" | "c++" = "c") =>
  constantProblems(await typeSource(source, language)).map(({ kind, meant, got }) => [kind, meant, got]);

describe("what goes wrong in constants on AVR", () => {
  test.each([
    ["long wait = 60 * 1000;", [["overflow", 60000n, -5536n]]],
    ["long wait = 60 * 1000L;", []],
    ["uint8_t low = 832;", [["conversion", 832n, 64n]]],
    ["void f(void) { uint8_t low; low = 16000000UL / 16 / 1200 - 1; }", [["conversion", 832n, 64n]]],
    ["uint8_t low = (uint8_t)832;", []],
    ["uint8_t low = 832 & 0xFF;", []],
    ["unsigned long mask = 1 << 16;", [["shift", 65536n, 0n]]],
    ["unsigned long mask = 1 << 15;", [["sign", 32768n, 4294934528n]]],
    ["unsigned int mask = 1 << 15;", []],
    ["unsigned long mask = 1UL << 15;", []],
    ["int x = 5 / 0;", [["division", undefined, undefined]]],
    ["unsigned x = 40000u * 2u;", [["wrap", 80000n, 14464n]]],
    ["unsigned char all = -1; signed char command = 0xF4;", []],
    ["void send(uint8_t b); void f(void) { send(0x1F4); }", [["conversion", 0x1f4n, 0xf4n]]],
    ["uint8_t f(void) { return 300; }", [["conversion", 300n, 44n]]],
  ])("%s", async (source, problems) => {
    expect(await problemsOf(source)).toEqual(problems);
  });

  test("what follows from a problem is not told again", async () => {
    expect(await problemsOf("uint8_t x = 60 * 1000 + 32767;")).toEqual([["overflow", 60000n, -5536n]]);
  });

  test("branches that a constant closes are not looked at", async () => {
    expect(await problemsOf("int x = 0 ? 1 / 0 : 2; void f(void) { if (0) { uint8_t y = 832; } }")).toEqual(
      [],
    );
  });

  test("each is found once, in code that is never called too", async () => {
    expect(await problemsOf("static void f(void) { for (;;) { long t = 300 * 300; } }")).toEqual([
      ["overflow", 90000n, 24464n],
    ]);
  });

  test("once for a template, however many instances it has", async () => {
    const source = "template <class T> long f(T t) { return t + 60 * 1000; } long x = f(1) + f(2L) + f('a');";
    expect(await problemsOf(source, "c++")).toEqual([["overflow", 60000n, -5536n]]);
  });
});
