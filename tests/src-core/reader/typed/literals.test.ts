import { describe, expect, test } from "vitest";
import { readCharacter, readString } from "../../../../src-core/reader/typed/characters.ts";
import { readNumber } from "../../../../src-core/reader/typed/literals.ts";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import { avrModel, ilp32Model } from "../../../../src-core/reader/types/data-models.ts";

const avr = basicTypes(avrModel);
const wide = basicTypes(ilp32Model);

describe("integer constants: the first type of the list that holds the value (C11 6.4.4.1p5)", () => {
  test.each([
    ["0", "int", 0n],
    ["32767", "int", 32767n],
    ["32768", "long", 32768n],
    ["65535", "long", 65535n],
    ["2147483647", "long", 2147483647n],
    ["2147483648", "long long", 2147483648n],
    ["0x7FFF", "int", 0x7fffn],
    ["0x8000", "unsigned int", 0x8000n],
    ["0xFFFF", "unsigned int", 0xffffn],
    ["0x10000", "long", 0x10000n],
    ["0x80000000", "unsigned long", 0x80000000n],
    ["0x100000000", "long long", 0x100000000n],
    ["0xFFFFFFFFFFFFFFFF", "unsigned long long", 0xffffffffffffffffn],
    ["0100000", "unsigned int", 0o100000n],
    ["017", "int", 15n],
    ["0b11110100", "int", 244n],
    ["1u", "unsigned int", 1n],
    ["65536U", "unsigned long", 65536n],
    ["1L", "long", 1n],
    ["16000000UL", "unsigned long", 16000000n],
    ["1lu", "unsigned long", 1n],
    ["1LL", "long long", 1n],
    ["1ULL", "unsigned long long", 1n],
    ["1'000'000", "long", 1000000n],
  ])("%s is %s on AVR", (text, type, value) => {
    expect(readNumber(text, avr)).toMatchObject({ kind: "integer", value, type: { name: type } });
  });

  test.each([
    ["65535", "int"],
    ["2147483648", "long long"],
    ["0x80000000", "unsigned int"],
    ["0xFFFF", "int"],
  ])("%s is %s where int has 32 bits", (text, type) => {
    expect(readNumber(text, wide)).toMatchObject({ type: { name: type } });
  });

  test.each(["08", "1x", "0b12", "0x", "1uu", "1lll", "12abc"])("%s is no number", (text) => {
    expect(readNumber(text, avr).kind).toBe("malformed");
  });
});

describe("floating constants (C11 6.4.4.2)", () => {
  test.each([
    ["1.5", 1.5, "double"],
    ["1.", 1, "double"],
    [".25", 0.25, "double"],
    ["1e3", 1000, "double"],
    ["2.5f", 2.5, "float"],
    ["1e-3F", Math.fround(0.001), "float"],
    ["0x1p4", 16, "double"],
    ["0x1.8p1", 3, "double"],
    ["1.0L", 1, "long double"],
  ])("%s", (text, value, type) => {
    expect(readNumber(text, wide)).toMatchObject({ kind: "floating", value, type: { name: type } });
  });

  test("a double of 32 bits keeps 24 bits of fraction", () => {
    expect(readNumber("16777217.0", avr)).toMatchObject({ value: 16777216 });
    expect(readNumber("16777217.0", wide)).toMatchObject({ value: 16777217 });
  });
});

describe("character constants (C11 6.4.4.4)", () => {
  test.each([
    ["'M'", 77n],
    ["'\\n'", 10n],
    ["'\\0'", 0n],
    ["'\\x41'", 65n],
    ["'\\101'", 65n],
    ["'\\''", 39n],
    ["'\\\\'", 92n],
    ["'\\a'", 7n],
    ["'\\t'", 9n],
    ["'\\v'", 11n],
  ])("%s", (text, value) => {
    expect(readCharacter(text, "c", avr)).toMatchObject({ value, type: { name: "int" } });
  });

  test("the value is that of a char converted to int: signed on AVR, unsigned on Arm (p10, p13)", () => {
    expect(readCharacter("'\\xFF'", "c", avr).value).toBe(-1n);
    expect(readCharacter("'\\xFF'", "c", wide).value).toBe(255n);
  });

  test("char in C++ (C++11 2.14.3p1)", () => {
    expect(readCharacter("'M'", "c++", avr).type.name).toBe("char");
  });
});

describe("string literals (C11 6.4.5)", () => {
  test("adjacent ones are one, and a zero ends it (p5, p6)", () => {
    expect(readString(['"M"', '"3"'], avr)).toMatchObject({ bytes: [0x4d, 0x33, 0], length: 3 });
  });

  test("escapes do not run on into the next literal (p7)", () => {
    expect(readString(['"\\x12"', '"3"'], avr).bytes).toEqual([0x12, 0x33, 0]);
  });

  test("text is UTF-8, escapes by number are bytes", () => {
    expect(readString(['"\u00e9"'], avr).bytes).toEqual([0xc3, 0xa9, 0]);
    expect(readString(['"\\xe9"'], avr).bytes).toEqual([0xe9, 0]);
    expect(readString(['u8"\\u00e9"'], avr).bytes).toEqual([0xc3, 0xa9, 0]);
  });

  test("raw strings keep their backslashes (C++11 2.14.5)", () => {
    expect(readString(['R"x(a\\n)x"'], avr).bytes).toEqual([0x61, 0x5c, 0x6e, 0]);
  });

  test("wide elements have the low byte first", () => {
    expect(readString(['L"A"'], avr)).toMatchObject({ bytes: [0x41, 0, 0, 0], length: 2 });
  });
});
