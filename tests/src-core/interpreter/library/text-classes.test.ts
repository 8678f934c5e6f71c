import { expect, test } from "vitest";
import type { LibraryTarget } from "./library-target.ts";
import { sketchLibrary } from "./library-target.ts";

function madeString(target: LibraryTarget, text: string): number {
  const address = target.room(6);
  target.call("String::String(const char *)", address, text);
  return address;
}

function textOf(target: LibraryTarget, string: number): string {
  return target.text(Number(target.call("String::c_str", string)));
}

test("a string has the six bytes that the core's WString.h gives it on AVR: pointer, capacity, length", async () => {
  const target = await sketchLibrary();
  expect(target.symbol("String::length").memberOf?.size).toBe(6);
  const string = madeString(target, "mouse");
  expect(target.bytes(string + 4, 2)).toEqual([5, 0]);
  expect(target.call("String::length", string)).toBe(5);
});

test("examples of the core's language reference", async () => {
  const target = await sketchLibrary();
  const string = madeString(target, "left,right");
  expect(target.call("String::indexOf(char)", string, 0x2c)).toBe(4);
  const part = target.room(6);
  target.call("String::substring(unsigned int)", part, string, 5);
  expect(textOf(target, part)).toBe("right");
  target.call("String::toUpperCase", part);
  expect(textOf(target, part)).toBe("RIGHT");
  expect(target.call("String::operator+=(int)", part, -5)).toBe(part);
  expect(textOf(target, part)).toBe("RIGHT-5");
  expect(target.call("String::toInt", madeString(target, "123abc"))).toBe(123);
});

test("a character is written where it stands, one beyond the end nowhere", async () => {
  const target = await sketchLibrary();
  const string = madeString(target, "mouse");
  target.memory.writeByte(Number(target.call("String::operator[]", string, 0)), 0x68);
  target.memory.writeByte(Number(target.call("String::operator[]", string, 9)), 0x68);
  expect(textOf(target, string)).toBe("house");
});

test("a string is released with its text, and is false without room for one", async () => {
  const target = await sketchLibrary();
  const string = madeString(target, "mouse");
  const buffer = Number(target.call("String::c_str", string));
  target.call("String::~String", string);
  expect(target.memory.allocatedAt(buffer)).toBe(0);
  target.memory.heapEnd = 0;
  const other = madeString(target, "mouse");
  expect(target.call("String::operator bool", other)).toBe(0);
  expect(target.call("String::length", other)).toBe(0);
});

test("print sends through the object's own write, one byte or many", async () => {
  const target = await sketchLibrary();
  const calls: string[] = [];
  target.callVirtual = (self, name, [first = 0, size]) => {
    expect([self, name]).toEqual([0x77, "write"]);
    if (size === undefined) calls.push(String.fromCharCode(Number(first)));
    else calls.push(String.fromCharCode(...target.bytes(Number(first), Number(size))));
    return size ?? 1;
  };
  expect(target.call("Print::println(int,int)", 0x77, -12, 10)).toBe(5);
  expect(target.call("Print::print(unsigned char,int)", 0x77, 0xab, 16)).toBe(2);
  expect(target.call("Print::print(double,int)", 0x77, Math.fround(6.2787), 2)).toBe(4);
  expect(target.call("Print::println()", 0x77)).toBe(2);
  expect(calls.join("")).toBe("-12\r\nAB6.28\r\n");
});

test("print of a Printable lets that print itself", async () => {
  const target = await sketchLibrary();
  target.callVirtual = (self, name, parameters) => {
    expect([self, name, ...parameters]).toEqual([0x99, "printTo", 0x77]);
    return 3;
  };
  expect(target.call("Print::print(const Printable &)", 0x77, 0x99)).toBe(3);
});
