import { describe, expect, test } from "vitest";
import { avrModel, ilp32Model } from "../../../../src-core/reader/types/data-models.ts";
import { sizeOf } from "../../../../src-core/reader/types/layout.ts";
import { standardType } from "../../../../src-core/reader/types/standard-names.ts";
import { typeText } from "../../../../src-core/reader/types/text.ts";
import { typeOfWords } from "../../../../src-core/reader/types/words.ts";

/** C11 6.7.2p2: the words of each line of the list name one type, in any order. */
const lists: readonly (readonly [words: string, name: string])[] = [
  ["void", "void"],
  ["char", "char"],
  ["signed char", "signed char"],
  ["char unsigned", "unsigned char"],
  ["short", "short"],
  ["signed short", "short"],
  ["short int", "short"],
  ["int short signed", "short"],
  ["unsigned short", "unsigned short"],
  ["int unsigned short", "unsigned short"],
  ["int", "int"],
  ["signed", "int"],
  ["signed int", "int"],
  ["unsigned", "unsigned int"],
  ["int unsigned", "unsigned int"],
  ["long", "long"],
  ["long signed int", "long"],
  ["unsigned long", "unsigned long"],
  ["long int unsigned", "unsigned long"],
  ["long long", "long long"],
  ["long int long", "long long"],
  ["unsigned long long int", "unsigned long long"],
  ["long unsigned long", "unsigned long long"],
  ["float", "float"],
  ["double", "double"],
  ["double long", "long double"],
  ["_Bool", "bool"],
];

describe("specifier words (C11 6.7.2p2)", () => {
  test.each(lists)("%s is %s", (words, name) => {
    const type = typeOfWords(words.split(" "), avrModel);
    expect(type && typeText(type)).toBe(name);
  });

  test.each([
    "short char",
    "long char",
    "long long long",
    "unsigned float",
    "short double",
    "long float",
    "signed bool",
    "int char",
    "unsigned void",
    "",
  ])("`%s` names no type", (words) => {
    expect(typeOfWords(words === "" ? [] : words.split(" "), avrModel)).toBeUndefined();
  });
});

/** Bytes: "Type Layout" of the wiki page "avr-gcc"; "Procedure Call Standard for the Arm Architecture", table 1. */
const sizes: readonly (readonly [words: string, avr: number, ilp32: number])[] = [
  ["char", 1, 1],
  ["short", 2, 2],
  ["int", 2, 4],
  ["long", 4, 4],
  ["long long", 8, 8],
  ["float", 4, 4],
  ["double", 4, 8],
  ["bool", 1, 1],
];

test.each(sizes)("sizeof(%s) is %i on AVR and %i on 32-bit cores", (words, avr, ilp32) => {
  const of = (model: typeof avrModel) => {
    const type = typeOfWords(words.split(" "), model);
    return type && sizeOf(type, model);
  };
  expect(of(avrModel)).toBe(avr);
  expect(of(ilp32Model)).toBe(ilp32);
});

/** C11 7.20.1.1: exactly that many bits, two's complement; 7.19p2. */
test.each([
  ["uint8_t", 8, false],
  ["int8_t", 8, true],
  ["uint16_t", 16, false],
  ["int16_t", 16, true],
  ["uint32_t", 32, false],
  ["int32_t", 32, true],
  ["uint64_t", 64, false],
  ["int64_t", 64, true],
] as const)("%s has %i bits without any header", (name, bits, signed) => {
  for (const model of [avrModel, ilp32Model]) {
    expect(standardType(name, model)).toMatchObject({ kind: "integer", bits, signed, name });
  }
});

test("size_t is as wide as a pointer", () => {
  expect(standardType("size_t", avrModel)).toMatchObject({ bits: 16, signed: false });
  expect(standardType("size_t", ilp32Model)).toMatchObject({ bits: 32, signed: false });
  expect(standardType("wint8_t", avrModel)).toBeUndefined();
});
