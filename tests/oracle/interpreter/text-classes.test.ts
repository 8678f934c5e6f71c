import { expect, test } from "vitest";
import { typeText } from "../../../src-core/reader/types/text.ts";
import { type LibraryTarget, sketchLibrary } from "../../src-core/interpreter/library/library-target.ts";
import { compiledRun } from "./compiled-run.ts";

/*
 * Print and String of the sketch core (Debian package arduino-core-avr), compiled and run on a simulated chip, beside
 * ours.
 */

const core = "/usr/share/arduino/hardware/arduino/avr/cores/arduino";

/** The classes without the rest of the core, which needs a board. */
const frame = `#define Arduino_h
#define DECIMAL_DIG __DECIMAL_DIG__
#include <avr/io.h>
#include "${core}/WString.h"
#include "${core}/Print.h"
#include "${core}/WString.cpp"
#include "${core}/Print.cpp"
extern "C" {
#include <stdlib.h>
}
#include "${core}/WMath.cpp"
class Port : public Print {
public:
  size_t write(uint8_t value) override { UDR0 = value; return 1; }
  using Print::write;
};
static Port port;
static void end(long value) { char digits[12]; port.write('='); port.write(ltoa(value, digits, 10)); port.write('\\n'); }
static void show(const String &text) { port.write('"'); port.write(text.c_str() ? text.c_str() : "(none)"); port.write('\\n'); }
`;

async function sent(statements: readonly string[]): Promise<readonly string[]> {
  const body = statements.map((statement) => `  ${statement}\n`).join("");
  const text = `${frame}int main() {\n${body}  UDR0 = 4;\n  for (;;) { }\n}\n`;
  const run = await compiledRun({ language: "c++", text, headers: {} });
  if (run.kind !== "sent") throw new Error(`${run.kind}: ${run.message}`);
  return run.text.split("\n").slice(0, -1);
}

type Argument = string | number;

/** An argument as C++ source of the parameter's type. */
function inCpp(type: string, argument: Argument): string {
  if (typeof argument === "string") {
    const literal = JSON.stringify(argument);
    if (type === "const String &") return `String(${literal})`;
    return type.includes("__FlashStringHelper") ? `F(${literal})` : literal;
  }
  if (Number.isNaN(argument)) return `(${type})__builtin_nan("")`;
  if (!Number.isFinite(argument)) return `(${type})${argument < 0 ? "-" : ""}__builtin_inf()`;
  return `(${type})${argument}${Number.isInteger(argument) && argument > 0x7fffffff ? "UL" : Number.isInteger(argument) ? "L" : ""}`;
}

/** An argument as our functions take it. */
function placed(target: LibraryTarget, type: string, argument: Argument): number {
  if (typeof argument === "number") {
    return type === "double" || type === "float" ? Math.fround(argument) : argument;
  }
  return type === "const String &" ? madeString(target, argument) : target.place(argument);
}

function madeString(target: LibraryTarget, text: string): number {
  const address = target.room(6);
  target.call("String::String(const char *)", address, text);
  return address;
}

function typesOf(target: LibraryTarget, name: string): readonly string[] {
  return target.symbol(name).type.parameters.map((type) => typeText(type));
}

/** What goes to the port, by a class that has a function for one byte alone. */
function printTarget(target: LibraryTarget): { readonly take: () => string } {
  let text = "";
  target.callVirtual = (self, name, parameters) => {
    if (name !== "write") throw new Error(name);
    if (parameters.length === 2) {
      return target.call("Print::write(const uint8_t *,size_t)", self, ...parameters);
    }
    text += String.fromCharCode(Number(parameters[0]));
    return 1;
  };
  return {
    take() {
      const taken = text;
      text = "";
      return taken;
    },
  };
}

const doubles = [
  0, -0.004, 1, 1.005, 1.999, -2.5, 3.25, 99.995, 123456.789, 16777217, 4294967040, 4.3e9, -5e9,
];
const others = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0.1, 0.999999, 1e-7];
const bases = [10, 16, 8, 2, 36, 1, 7];

const prints: readonly (readonly [types: string, ...given: readonly Argument[]])[] = [
  ["const char *", "mouse"],
  ["const String &", "mouse"],
  ["const __FlashStringHelper *", "mouse"],
  ["char", 65],
  ...bases.flatMap((base) => [
    ["unsigned char,int", 200, base] as const,
    ["int,int", -1234, base] as const,
    ["int,int", 1234, base] as const,
    ["unsigned int,int", 65535, base] as const,
    ["long,int", -2147483648, base] as const,
    ["unsigned long,int", 4294967295, base] as const,
  ]),
  ["int,int", 66, 0],
  ...[...doubles, ...others].flatMap((value) =>
    [0, 2, 5].map((decimals) => ["double,int", value, decimals] as const),
  ),
];

test.each(["print", "println"])("Print::%s", async (method) => {
  const target = await sketchLibrary();
  const port = printTarget(target);
  const statements: string[] = [];
  const ours: string[] = [];
  for (const [types, ...given] of prints) {
    const name = `Print::${method}(${types})`;
    const each = typesOf(target, name);
    statements.push(
      `end(port.${method}(${given.map((value, at) => inCpp(each[at] ?? "", value)).join(", ")}));`,
    );
    const count = target.call(name, 0, ...given.map((value, at) => placed(target, each[at] ?? "", value)));
    ours.push(...`${port.take()}=${count}`.split("\n"));
  }
  const theirs: string[] = [];
  for (let first = 0; first < statements.length; first += 30) {
    theirs.push(...(await sent(statements.slice(first, first + 30))));
  }
  expect(ours).toEqual(theirs);
});

const changes: readonly (readonly [before: string, method: string, ...given: readonly Argument[]])[] = [
  ["mouse", "concat(const String &)", " two"],
  ["mouse", "concat(const char *)", " two"],
  ["mouse", "concat(const __FlashStringHelper *)", " two"],
  ["mouse", "concat(char)", 66],
  ["mouse", "concat(unsigned char)", 200],
  ["mouse", "concat(int)", -5],
  ["mouse", "concat(unsigned int)", 65535],
  ["mouse", "concat(long)", -70000],
  ["mouse", "concat(unsigned long)", 4294967295],
  ["mouse", "concat(float)", 1.005],
  ["mouse", "concat(double)", -1.5],
  ["", "concat(const char *)", ""],
  ["mouse", "compareTo(const String &)", "moth"],
  ["mouse", "compareTo(const String &)", "mouse"],
  ["", "compareTo(const String &)", "m"],
  ["m", "compareTo(const String &)", ""],
  ["mouse", "equals(const String &)", "mouse"],
  ["mouse", "equals(const char *)", "mousE"],
  ["", "equals(const char *)", ""],
  ["mouse", "equalsIgnoreCase(const String &)", "MOUSe"],
  ["mouse", "startsWith(const String &)", "mo"],
  ["mouse", "startsWith(const String &)", "ou"],
  ["mouse", "startsWith(const String &)", "mouse and"],
  ["mouse", "startsWith(const String &,unsigned int)", "ou", 1],
  ["mouse", "startsWith(const String &,unsigned int)", "se", 4],
  ["mouse", "endsWith(const String &)", "use"],
  ["mouse", "endsWith(const String &)", "us"],
  ["mouse", "charAt(unsigned int)", 1],
  ["mouse", "charAt(unsigned int)", 5],
  ["mouse", "setCharAt(unsigned int,char)", 0, 104],
  ["mouse", "setCharAt(unsigned int,char)", 9, 104],
  ["a,b,c", "indexOf(char)", 44],
  ["a,b,c", "indexOf(char,unsigned int)", 44, 2],
  ["a,b,c", "indexOf(char,unsigned int)", 44, 9],
  ["a,b,c", "indexOf(const String &)", ",c"],
  ["a,b,c", "indexOf(const String &)", ""],
  ["a,b,c", "indexOf(const String &,unsigned int)", ",", 2],
  ["a,b,c", "lastIndexOf(char)", 44],
  ["a,b,c", "lastIndexOf(char)", 122],
  ["", "lastIndexOf(char)", 44],
  ["a,b,c", "lastIndexOf(char,unsigned int)", 44, 2],
  ["a,b,c", "lastIndexOf(char,unsigned int)", 44, 7],
  ["a,b,c", "lastIndexOf(const String &)", ","],
  ["a,b,c", "lastIndexOf(const String &)", ",c"],
  ["a,b,c", "lastIndexOf(const String &)", ""],
  ["a,b,c", "lastIndexOf(const String &,unsigned int)", ",", 1],
  ["a,b,c", "lastIndexOf(const String &,unsigned int)", ",", 9],
  ["mouse", "replace(char,char)", 111, 48],
  ["a-b-c", "replace(const String &,const String &)", "-", " to "],
  ["a--b--c", "replace(const String &,const String &)", "--", "+"],
  ["aaaa", "replace(const String &,const String &)", "aa", "b"],
  ["aaa", "replace(const String &,const String &)", "a", "bb"],
  ["abab", "replace(const String &,const String &)", "ab", "cd"],
  ["mouse", "replace(const String &,const String &)", "", "x"],
  ["mouse", "replace(const String &,const String &)", "ou", ""],
  ["mouse", "remove(unsigned int)", 2],
  ["mouse", "remove(unsigned int)", 9],
  ["mouse", "remove(unsigned int,unsigned int)", 1, 2],
  ["mouse", "remove(unsigned int,unsigned int)", 1, 99],
  ["mouse", "remove(unsigned int,unsigned int)", 1, 0],
  ["MouSe 1", "toLowerCase()"],
  ["MouSe 1", "toUpperCase()"],
  ["  mouse \t", "trim()"],
  ["   ", "trim()"],
  [" -42x", "toInt()"],
  ["99999999999", "toInt()"],
  ["mouse", "reserve(unsigned int)", 20],
  ["mouse", "length()"],
];

const isVoid = (target: LibraryTarget, name: string) => target.symbol(name).type.returns.kind === "void";

test("member functions of String", async () => {
  const target = await sketchLibrary();
  const statements: string[] = [];
  const ours: string[] = [];
  for (const [before, method, ...given] of changes) {
    const name = `String::${method}`;
    const each = typesOf(target, name);
    const call = `s.${method.slice(0, method.indexOf("("))}(${given.map((value, at) => inCpp(each[at] ?? "", value)).join(", ")})`;
    const act = isVoid(target, name) ? `${call}; end(0);` : `end(${call});`;
    statements.push(`{ String s(${JSON.stringify(before)}); ${act} show(s); }`);
    const self = madeString(target, before);
    const result = target.call(
      name,
      self,
      ...given.map((value, at) => placed(target, each[at] ?? "", value)),
    );
    ours.push(`=${result ?? 0}`, `"${target.text(Number(target.call("String::c_str", self)))}`);
  }
  const theirs: string[] = [];
  for (let first = 0; first < statements.length; first += 25) {
    theirs.push(...(await sent(statements.slice(first, first + 25))));
  }
  const label = (line: string, index: number) => `${changes[index >> 1]?.join(" ")}: ${line}`;
  expect(ours.map(label)).toEqual(theirs.map(label));
});

const made: readonly (readonly [types: string, ...given: readonly Argument[]])[] = [
  ["const String &", "mouse"],
  ["const __FlashStringHelper *", "mouse"],
  ["char", 65],
  ...[10, 16, 2].flatMap((base) => [
    ["unsigned char,unsigned char", 200, base] as const,
    ["int,unsigned char", -1234, base] as const,
    ["unsigned int,unsigned char", 65535, base] as const,
    ["long,unsigned char", -70000, base] as const,
    ["unsigned long,unsigned char", 4294967295, base] as const,
  ]),
  ...[0, 1.005, -2.5, 123456.789, 1e-5, 3e9].flatMap((value) =>
    [0, 2, 6].flatMap((decimals) => [
      ["float,unsigned char", value, decimals] as const,
      ["double,unsigned char", value, decimals] as const,
    ]),
  ),
];

test("constructors of String", async () => {
  const target = await sketchLibrary();
  const statements: string[] = [];
  const ours: string[] = [];
  for (const [types, ...given] of made) {
    const name = `String::String(${types})`;
    const each = typesOf(target, name);
    statements.push(`show(String(${given.map((value, at) => inCpp(each[at] ?? "", value)).join(", ")}));`);
    const self = target.room(6);
    target.call(name, self, ...given.map((value, at) => placed(target, each[at] ?? "", value)));
    ours.push(`"${target.text(Number(target.call("String::c_str", self)))}`);
  }
  expect(ours).toEqual(await sent(statements));
});

test("parts and sums of strings", async () => {
  const target = await sketchLibrary();
  const parts = [
    [1, 3],
    [3, 1],
    [0, 99],
    [7, 9],
    [2, 2],
  ] as const;
  const sums = ["const String &", "const char *", "char", "unsigned char", "int", "unsigned long", "double"];
  const right = (type: string): Argument => (type.endsWith("&") || type.endsWith("*") ? "+" : 90);
  const ours = [
    ...parts.map(([begin, end]) => {
      const result = target.room(6);
      target.call(
        "String::substring(unsigned int,unsigned int)",
        result,
        madeString(target, "mouse"),
        begin,
        end,
      );
      return result;
    }),
    ...sums.map((type) =>
      Number(
        target.call(
          `operator+(const StringSumHelper &,${type})`,
          madeString(target, "mouse"),
          placed(target, type, right(type)),
        ),
      ),
    ),
  ];
  const theirs = await sent([
    ...parts.map(([begin, end]) => `show(String("mouse").substring(${begin}, ${end}));`),
    ...sums.map((type) => `show(String("mouse") + ${inCpp(type, right(type))});`),
  ]);
  expect(ours.map((result) => `"${target.text(Number(target.call("String::c_str", result)))}`)).toEqual(
    theirs,
  );
});

test("random numbers and ranges", async () => {
  const target = await sketchLibrary();
  const maps = [
    [5, 0, 10, 0, 100],
    [-3, 0, 10, 0, 100],
    [1000, 0, 1023, 255, 0],
    [7, 0, 3, 10, 11],
    [2000000000, 0, 10, 0, 100],
    [1, 5, 5, 0, 9],
    [9, 5, 5, 0, 9],
  ];
  const ranges = [[10], [0], [5, 8], [8, 5], [-5, 5], [100000]];
  const inRange = (numbers: readonly number[]) => numbers.map((value) => `${value}L`).join(", ");
  const theirs = await sent([
    ...maps.map(
      (numbers) => `{ volatile long x = ${numbers[0]}; end(map(x, ${inRange(numbers.slice(1))})); }`,
    ),
    "randomSeed(1234);",
    ...ranges.flatMap((numbers) => [1, 2, 3].map(() => `end(random(${inRange(numbers)}));`)),
    "end(makeWord(0x12, 0x34));",
  ]);
  const ours = maps.map((numbers) => target.call("map", ...numbers));
  target.call("randomSeed", 1234);
  for (const numbers of ranges) {
    const name = `random(${numbers.map(() => "long").join()})`;
    for (let draw = 0; draw < 3; draw += 1) ours.push(target.call(name, ...numbers));
  }
  ours.push(target.call("makeWord(uint8_t,uint8_t)", 0x12, 0x34));
  expect(ours.map((value) => `=${value}`)).toEqual(theirs);
});
