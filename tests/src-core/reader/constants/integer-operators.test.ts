import { describe, expect, test } from "vitest";
import { compute } from "../../../../src-core/reader/constants/integer-operators.ts";
import { wrap } from "../../../../src-core/reader/constants/value.ts";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";

const { int, unsignedInt, unsignedChar, signedChar, bool, long } = basicTypes(avrModel);

describe("a value as a type keeps it (C11 6.3.1.3)", () => {
  test("unsigned: modulo one more than the largest", () => {
    expect(wrap(832n, unsignedChar)).toBe(64n);
    expect(wrap(-1n, unsignedInt)).toBe(65535n);
  });

  test("signed: two's complement, as GCC defines it", () => {
    expect(wrap(60000n, int)).toBe(-5536n);
    expect(wrap(200n, signedChar)).toBe(-56n);
  });

  test("bool keeps whether it was zero (6.3.1.2)", () => {
    expect(wrap(256n, bool)).toBe(1n);
  });
});

describe("operators", () => {
  test("a signed result that does not fit is an overflow (C11 6.5p5)", () => {
    expect(compute("*", 60n, 1000n, int)).toEqual({ got: -5536n, meant: 60000n, problem: "overflow" });
    expect(compute("+", 32767n, 1n, int).problem).toBe("overflow");
    expect(compute("*", 60n, 1000n, long)).toEqual({ got: 60000n, meant: 60000n, problem: undefined });
  });

  test("an unsigned one wraps, which is defined (C11 6.2.5p9) and told for sums and products", () => {
    expect(compute("*", 60000n, 2n, unsignedInt)).toEqual({ got: 54464n, meant: 120000n, problem: "wrap" });
    expect(compute("-", 0n, 1n, unsignedInt)).toEqual({ got: 65535n, meant: -1n, problem: undefined });
  });

  test("division cuts towards zero and has no answer by zero (C11 6.5.5p5, p6)", () => {
    expect(compute("/", -7n, 2n, int).got).toBe(-3n);
    expect(compute("%", -7n, 2n, int).got).toBe(-1n);
    expect(compute("/", 1n, 0n, int)).toEqual({ got: undefined, meant: undefined, problem: "division" });
    expect(compute("/", -32768n, -1n, int).problem).toBe("overflow");
  });

  test("shifts by the width and more are no shifts (C11 6.5.7p3)", () => {
    expect(compute("<<", 1n, 16n, int)).toMatchObject({ meant: 65536n, problem: "shift" });
    expect(compute(">>", 1n, -1n, int)).toMatchObject({ got: undefined, problem: "shift" });
    expect(compute("<<", 1n, 15n, unsignedInt)).toMatchObject({ got: 32768n, problem: undefined });
  });

  test("reaching the sign bit is common practice and no problem by itself, going past it is", () => {
    expect(compute("<<", 1n, 15n, int)).toMatchObject({ got: -32768n, problem: undefined });
    expect(compute("<<", 3n, 15n, int)).toMatchObject({ problem: "overflow" });
  });

  test("a signed right shift keeps the sign, as GCC defines it", () => {
    expect(compute(">>", -5n, 1n, int).got).toBe(-3n);
  });
});
