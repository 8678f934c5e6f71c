import { describe, expect, it } from "vitest";
import { integerArithmetic, wrap } from "../../../../src-core/facts/walk/integers.ts";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";
import { argumentsOf, walkC, walkSketch } from "./walk-text.ts";

const types = basicTypes(avrModel);

/** What `delay(expression)` would be told, in a C function whose parameter `x` is an unknown byte. */
function known(expression: string, before = ""): string | undefined {
  const walk = walkC(`void delay(long ms);
void see(uint8_t x) {
  ${before}
  delay(${expression});
}
`);
  return argumentsOf(walk, "delay")[0];
}

// The rules are those of C11 6.3 and 6.5 with the sizes of avr-gcc: int 16 bits, long 32, char signed.
describe("integers of the target", () => {
  it("wraps to the width of the type (C11 6.3.1.3; GCC manual, Integers implementation: modulo 2^N)", () => {
    expect(wrap(60000, types.int)).toBe(-5536);
    expect(wrap(-1, types.unsignedInt)).toBe(65535);
    expect(wrap(300, types.unsignedChar)).toBe(44);
    expect(wrap(2 ** 31, types.long)).toBe(-(2 ** 31));
    expect(wrap(-1, types.unsignedLong)).toBe(4294967295);
    expect(wrap(2, types.bool)).toBe(1);
  });

  it("multiplies 32-bit numbers exactly before it wraps", () => {
    // 4294967295 squared is 2^64 - 2^33 + 1, whose low 32 bits are 1.
    expect(integerArithmetic("*", 4294967295, 4294967295, types.unsignedLong)).toBe(1);
  });

  it("divides towards zero (C11 6.5.5p6) and shifts signed numbers arithmetically (GCC manual, Integers)", () => {
    expect(integerArithmetic("/", -7, 2, types.int)).toBe(-3);
    expect(integerArithmetic("%", -7, 2, types.int)).toBe(-1);
    expect(integerArithmetic(">>", -7, 1, types.int)).toBe(-4);
  });

  it("has no value for a division by zero or a shift by the width (C11 6.5.5p5, 6.5.7p3)", () => {
    expect(integerArithmetic("/", 1, 0, types.int)).toBeUndefined();
    expect(integerArithmetic("<<", 1, 16, types.int)).toBeUndefined();
  });
});

describe("values of expressions", () => {
  it.each([
    ["1 + 2 * 3", "7"],
    ["60 * 1000", "-5536"],
    ["60UL * 1000", "60000"],
    ["(uint8_t)300", "44"],
    ["~0x0F & 0xFF", "240"],
    ["sizeof(long)", "4"],
    ["'A'", "65"],
    ["5 > 3 && 2 > 1", "1"],
    ["0 ? 10 : 20", "20"],
    ["(1, 2)", "2"],
  ])("%s is %s", (expression, value) => {
    expect(known(expression)).toBe(value);
  });

  it("knows bits of values that are not known as a whole", () => {
    expect(known("x | 0xFF")).toBe("255");
    expect(known("x & 0")).toBe("0");
    expect(known("(x & 0x0F) >> 4")).toBe("0");
    expect(known("(x | 0x80) == 0")).toBe("0");
    expect(known("x >> 8")).toBe("0");
    expect(known("x & 1")).toBe("?");
  });

  it("keeps track of variables, arrays and structures", () => {
    expect(known("a[1] + a[2]", "int a[3] = {1, 20}; a[2] = 5;")).toBe("25");
    expect(known("p.y", "struct { int x, y; } p = {.y = 7};")).toBe("7");
    expect(known("*p", "int a[3] = {1, 2, 3}; int *p = a; p++; p += 1;")).toBe("3");
    expect(known("n", "int n = 3; n <<= 2; n |= 1; n--;")).toBe("12");
    expect(known("a[0]", "int a[2] = {1, 2}; a[x] = 9;")).toBe("?");
  });

  // A reference names its object for good, and what is written is the object: C++11 8.3.2.
  it("does not know what a loop writes through a reference", () => {
    const walk = walkSketch(`
      struct Answer { byte &into; bool ask() { while (millis() < 9) if (digitalRead(7)) { into = digitalRead(8); return true; } return false; } };
      bool ask(byte &into) { while (millis() < 9) if (digitalRead(7)) { into = digitalRead(8); return true; } return false; }
      void setup() {
        byte first = 4, second = 5;
        ask(first);
        delay(first);
        Answer{second}.ask();
        delay(second);
      }
      void loop() {}`);
    expect(argumentsOf(walk, "delay")).toEqual(["?", "?"]);
  });
});
