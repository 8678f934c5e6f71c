import { describe, expect, test } from "vitest";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import {
  fits,
  promote,
  promoteBitField,
  usualArithmetic,
} from "../../../../src-core/reader/types/conversions.ts";
import { avrModel, ilp32Model } from "../../../../src-core/reader/types/data-models.ts";

const avr = basicTypes(avrModel);
const wide = basicTypes(ilp32Model);

describe("integer promotion (C11 6.3.1.1p2: `int` if it can represent all values, else `unsigned int`)", () => {
  test("AVR, where int has 16 bits", () => {
    expect(promote(avr.bool, avrModel)).toBe(avr.int);
    expect(promote(avr.char, avrModel)).toBe(avr.int);
    expect(promote(avr.unsignedChar, avrModel)).toBe(avr.int);
    expect(promote(avr.short, avrModel)).toBe(avr.int);
    expect(promote(avr.unsignedShort, avrModel)).toBe(avr.unsignedInt);
    expect(promote(avr.unsignedInt, avrModel)).toBe(avr.unsignedInt);
    expect(promote(avr.long, avrModel)).toBe(avr.long);
  });

  test("32-bit cores, where an unsigned short fits an int", () => {
    expect(promote(wide.unsignedShort, ilp32Model)).toBe(wide.int);
    expect(promote(wide.unsignedLong, ilp32Model)).toBe(wide.unsignedLong);
  });

  test("a bit-field goes by its width", () => {
    expect(promoteBitField(avr.unsignedInt, 15, avrModel, "c")).toBe(avr.int);
    expect(promoteBitField(avr.unsignedInt, 16, avrModel, "c")).toBe(avr.unsignedInt);
    expect(promoteBitField(avr.int, 16, avrModel, "c++")).toBe(avr.int);
    expect(promoteBitField(wide.unsignedInt, 31, ilp32Model, "c")).toBe(wide.int);
    expect(promoteBitField(avr.unsignedLong, 20, avrModel, "c++")).toBe(avr.unsignedLong);
  });

  test("gcc's C keeps the width of a bit-field wider than `int` (seen in what avr-gcc makes)", () => {
    const narrow = promoteBitField(avr.unsignedLong, 20, avrModel, "c");
    expect(narrow).toMatchObject({ bits: 20, signed: false });
    expect(usualArithmetic(narrow, avr.int, avrModel)).toBe(narrow);
    expect(usualArithmetic(narrow, avr.long, avrModel)).toBe(avr.long);
    expect(promoteBitField(avr.unsignedLongLong, 32, avrModel, "c")).toBe(avr.unsignedLong);
  });
});

describe("usual arithmetic conversions (C11 6.3.1.8)", () => {
  test("same signedness: the higher rank", () => {
    expect(usualArithmetic(avr.unsignedChar, avr.char, avrModel)).toBe(avr.int);
    expect(usualArithmetic(avr.int, avr.long, avrModel)).toBe(avr.long);
    expect(usualArithmetic(avr.unsignedLong, avr.unsignedInt, avrModel)).toBe(avr.unsignedLong);
  });

  test("unsigned of no lower rank wins", () => {
    expect(usualArithmetic(avr.int, avr.unsignedInt, avrModel)).toBe(avr.unsignedInt);
    expect(usualArithmetic(avr.long, avr.unsignedLongLong, avrModel)).toBe(avr.unsignedLongLong);
  });

  test("signed wins where it holds all values of the unsigned type", () => {
    expect(usualArithmetic(avr.unsignedInt, avr.long, avrModel)).toBe(avr.long);
    expect(usualArithmetic(wide.unsignedLong, wide.longLong, ilp32Model)).toBe(wide.longLong);
  });

  test("else the unsigned type of the signed one: unsigned int and long of 32 bits each", () => {
    expect(usualArithmetic(wide.unsignedInt, wide.long, ilp32Model)).toBe(wide.unsignedLong);
  });

  test("a floating operand decides", () => {
    expect(usualArithmetic(avr.float, avr.longLong, avrModel)).toBe(avr.float);
    expect(usualArithmetic(avr.int, avr.double, avrModel)).toBe(avr.double);
    expect(usualArithmetic(avr.float, avr.double, avrModel)).toBe(avr.double);
    expect(usualArithmetic(avr.longDouble, avr.double, avrModel)).toBe(avr.longDouble);
  });
});

test("ranges (C11 5.2.4.2.1 and two's complement)", () => {
  expect(fits(127n, avr.signedChar)).toBe(true);
  expect(fits(128n, avr.signedChar)).toBe(false);
  expect(fits(-128n, avr.signedChar)).toBe(true);
  expect(fits(32767n, avr.int)).toBe(true);
  expect(fits(32768n, avr.int)).toBe(false);
  expect(fits(65535n, avr.unsignedInt)).toBe(true);
  expect(fits(-1n, avr.unsignedInt)).toBe(false);
  expect(fits(1n, avr.bool)).toBe(true);
  expect(fits(2n, avr.bool)).toBe(false);
});
