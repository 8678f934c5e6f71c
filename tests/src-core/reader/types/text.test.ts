import { expect, test } from "vitest";
import { basicTypes } from "../../../../src-core/reader/types/basic-types.ts";
import { avrModel } from "../../../../src-core/reader/types/data-models.ts";
import {
  arrayOf,
  pointerTo,
  qualify,
  referenceTo,
  renamed,
} from "../../../../src-core/reader/types/derive.ts";
import { declarationText, typeText } from "../../../../src-core/reader/types/text.ts";
import type { Type } from "../../../../src-core/reader/types/types.ts";

const { int, unsignedChar, char, void: none } = basicTypes(avrModel);
const byte = renamed(unsignedChar, "uint8_t");
const constant = { const: true, volatile: false };
const changing = { const: false, volatile: true };
const handler: Type = { kind: "function", returns: none, parameters: [int, byte], variadic: false };

/** Spellings by the grammar of type names, C11 6.7.7, with its own examples of p3. */
test.each([
  [int, "int"],
  [byte, "uint8_t"],
  [pointerTo(int), "int *"],
  [arrayOf(pointerTo(int), 3), "int *[3]"],
  [pointerTo(arrayOf(int, 3)), "int (*)[3]"],
  [pointerTo(qualify(char, constant)), "const char *"],
  [qualify(pointerTo(char), constant), "char *const"],
  [pointerTo(qualify(byte, changing)), "volatile uint8_t *"],
  [pointerTo(handler), "void (*)(int, uint8_t)"],
  [referenceTo(byte, "lvalue"), "uint8_t &"],
  [arrayOf(byte, undefined), "uint8_t []"],
] as const)("type %#", (type, text) => {
  expect(typeText(type)).toBe(text);
});

test("declarations put the name where it stands in C", () => {
  expect(declarationText(arrayOf(byte, 4), "buf")).toBe("uint8_t buf[4]");
  expect(declarationText(pointerTo(handler), "then")).toBe("void (*then)(int, uint8_t)");
  expect(declarationText(qualify(pointerTo(char), constant), "p")).toBe("char *const p");
});
