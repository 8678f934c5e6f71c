import { expect, test } from "vitest";
import { library } from "../../../../src-core/interpreter/library/library.ts";
import { typeSource } from "../../reader/typed/type-source.ts";
import { cLibrary, sketchLibrary } from "./library-target.ts";

test("calloc clears, realloc keeps what was there (C11 7.22.3)", async () => {
  const target = await cLibrary();
  const block = Number(target.call("calloc", 3, 2));
  expect(target.memory.allocatedAt(block)).toBe(6);
  expect(target.bytes(block, 6)).toEqual([0, 0, 0, 0, 0, 0]);
  target.memory.writeByte(block + 5, 7);
  const larger = Number(target.call("realloc", block, 20));
  expect(target.bytes(larger, 6)).toEqual([0, 0, 0, 0, 0, 7]);
  expect(target.memory.allocatedAt(block)).toBe(0);
  target.call("free", larger);
  expect(target.memory.allocatedAt(larger)).toBe(0);
});

test("no room gives a null pointer, and realloc leaves the old block (C11 7.22.3.5p4)", async () => {
  const target = await cLibrary();
  const block = Number(target.call("malloc", 10));
  expect(target.call("malloc", 0xf000)).toBe(0);
  expect(target.call("realloc", block, 0xf000)).toBe(0);
  expect(target.memory.allocatedAt(block)).toBe(10);
  expect(target.call("free", 0)).toBeUndefined();
});

test("qsort orders by the program's own comparison, bsearch finds with it (C11 7.22.5)", async () => {
  const target = await cLibrary();
  const base = target.place("\u0005\u0003\u0009\u0001\u0007");
  target.callPointer = (compare, [left, right]) => {
    expect(compare).toBe(0x1234);
    return target.memory.readByte(Number(left)) - target.memory.readByte(Number(right));
  };
  target.call("qsort", base, 5, 1, 0x1234);
  expect(target.bytes(base, 5)).toEqual([1, 3, 5, 7, 9]);
  expect(target.call("bsearch", "\u0007", base, 5, 1, 0x1234)).toBe(base + 3);
  expect(target.call("bsearch", "\u0004", base, 5, 1, 0x1234)).toBe(0);
});

test("what needs hardware is not here", async () => {
  const target = await sketchLibrary();
  for (const name of ["digitalWrite", "millis", "delay", "analogRead", "HardwareSerial::begin"]) {
    expect(library(target.symbol(name))).toBeUndefined();
  }
});

test("a function that the firmware itself declares is no library's, whatever its name", async () => {
  const { functions } = await typeSource("unsigned char square(unsigned char side);");
  expect(functions.map(library)).toEqual([undefined]);
});
