import { expect, test } from "vitest";
import { cLibrary } from "../../src-core/interpreter/library/library-target.ts";
import { compiledRun } from "./compiled-run.ts";

/*
 * Calls of C library functions: what avr-libc's, linked into an image and run on a simulated chip, give back is what
 * ours give.
 */

type Argument = string | number | { readonly double: number } | { readonly long: number };
type Case = readonly [name: string, ...given: readonly Argument[]];

const double = (value: number): Argument => ({ double: value });
const long = (value: number): Argument => ({ long: value });

function inC(argument: Argument): string {
  if (typeof argument === "string") return JSON.stringify(argument);
  if (typeof argument === "number") return argument > 0x7fff ? `${argument}U` : `${argument}`;
  if ("long" in argument) return `${argument.long}L`;
  return Number.isFinite(argument.double)
    ? `(double)${argument.double.toExponential()}`
    : Number.isNaN(argument.double)
      ? '__builtin_nan("")'
      : `${argument.double < 0 ? "-" : ""}__builtin_inf()`;
}

function plain(argument: Argument): string | number {
  if (typeof argument !== "object") return argument;
  return "long" in argument ? argument.long : Math.fround(argument.double);
}

const frame = `#include <avr/io.h>
#include <ctype.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <util/crc16.h>
#include <util/parity.h>
static char buffer[128];
static void out(char c) { UDR0 = c; }
static void line(const char *text) { while (*text) out(*text++); out('\\n'); }
static void whole(long value) { char digits[12]; line(ltoa(value, digits, 10)); }
static void bits(float value) { uint32_t held; char digits[12]; memcpy(&held, &value, 4); line(ultoa(held, digits, 16)); }
`;

/** Sends each statement's line. Functions named here are the library's own: the compiler computes none of them. */
async function sent(
  statements: readonly string[],
  names: readonly string[] = [],
): Promise<readonly string[]> {
  const body = statements.map((statement) => `  ${statement}\n`).join("");
  const own = names.map((name) => `extern __typeof__(${name}) called_${name} __asm__("${name}");\n`).join("");
  const text = `${frame}${own}int main(void) {\n${body}  out(4);\n  for (;;) { }\n}\n`;
  const run = await compiledRun({ language: "c", text, headers: {} });
  if (run.kind !== "sent") throw new Error(`${run.kind}: ${run.message}`);
  return run.text.split("\n").slice(0, -1);
}

async function compare(
  cases: readonly Case[],
  statement: (call: string) => string,
  ours: (...call: Case) => string,
): Promise<void> {
  const calls = cases.map(([name, ...given]) => ({ name, arguments: given.map(inC).join(", ") }));
  const isInline = (name: string) => /^_crc|^parity|^sn?printf|^(?:fabs|copysign|square)$/.test(name);
  const theirs = await sent(
    calls.map(({ name, arguments: given }) =>
      statement(`${isInline(name) ? "" : "called_"}${name}(${given})`),
    ),
    [...new Set(cases.map(([name]) => name))].filter((name) => !isInline(name)),
  );
  const shown = (text: string, index: number) =>
    `${calls[index]?.name}(${calls[index]?.arguments}) = ${text}`;
  expect(cases.map((each) => ours(...each)).map(shown)).toEqual(theirs.map(shown));
}

const formats: readonly Case[] = [
  ["%d", -42],
  ["%5d|%-5d|%05d|%+d|% d", 42, 42, -42, 42, 42],
  ["%u %x %X %o", 65535, -1, 48879, 8],
  ["%#x %#X %#o %#x %#o", 255, 255, 8, 0, 0],
  ["%08lx %ld %lu", long(0x1234abcd), long(-123456789), long(-1)],
  ["%.5d|%8.3d|%-8.3d|%08.3d", 42, 42, 42, 42],
  ["%.0d|%.0u|%.0x|%.d", 0, 0, 0, 0],
  ["%s|%10s|%-10s|%.2s|%5.1s", "mouse", "mouse", "mouse", "mouse", "mouse"],
  ["%c%c|%3c|%-3c|", 65, 66, 67, 68],
  ["%p|%10p", 0x1234, 0xff],
  ["100%%|%5d%%", 7],
  ["%hd %hhd %hu", 1000, 1000, 65535],
  ["%+05d|%+-6d|% 05d", 42, 42, 42],
  ["%#06x|%#-8x|%#8X", 255, 255, 255],
  ["%#.4o|%#.4x", 8, 255],
  ["%i %+u %+5u|% u|%+x|%+.3u", 17, 5, 5, 5, 5, 5],
  ["%li %lX %#lo %.9ld", long(-70000), long(0xabcdef), long(8), long(70000)],
  ["%f|%8f|%-8f|%e|%g|%.2f", double(1.5), double(1.5), double(1.5), double(1.5), double(1.5), double(1.5)],
  ["%d %q %d", 1, 2],
  ["%d %lld %d", 1, 2, 3],
  ["%d %*d %d", 1, 2, 3],
  ["%d %k", 5],
  ["ends %", 5],
  ["%zu %d", 5, 6],
  ["%-05d|%- d|%+u|% x", 42, 42, 42, 42],
];

test("sprintf", async () => {
  const target = await cLibrary();
  const cases = formats.map(([format, ...given]): Case => ["sprintf", format, ...given]);
  await compare(
    cases,
    (call) => `memset(buffer, 0, 128); ${call.replace("sprintf(", "sprintf(buffer, ")}; line(buffer);`,
    (name, ...given) => {
      const buffer = target.room(128);
      target.call(name, buffer, ...given.map(plain));
      return target.text(buffer);
    },
  );
});

test("sprintf's result", async () => {
  const target = await cLibrary();
  const cases = formats.map(([format, ...given]): Case => ["snprintf", format, ...given]);
  await compare(
    cases,
    (call) => `whole(${call.replace("snprintf(", "snprintf(buffer, 4, ")});`,
    (name, ...given) => String(target.call(name, target.room(128), 4, ...given.map(plain))),
  );
});

const someNumbers = [0, 1, -1, 0.5, 1.5, 2.5, -2.5, 0.1, 3.25, 9.999, 99.9951, 123.456, 1234.5678, 99999.9];
const moreNumbers = [
  123456.789, 16777216, 123456789, 4e9, 1e10, 3.4e38, 1e-3, 1.5e-5, 1e-10, 0.05, 0.005, 2.675,
];

test("dtostrf", async () => {
  const target = await cLibrary();
  const numbers = [
    ...someNumbers,
    ...moreNumbers,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  const shapes = [
    [1, 0],
    [6, 2],
    [-8, 1],
    [4, 2],
    [12, 6],
    [1, 9],
  ] as const;
  const cases = numbers.flatMap((number) =>
    shapes.map(([width, decimals]): Case => ["dtostrf", double(number), width, decimals]),
  );
  for (let first = 0; first < cases.length; first += 60) {
    await compare(
      cases.slice(first, first + 60),
      (call) => `line(${call.replace(/\)$/, ", buffer)")});`,
      (name, ...given) => target.text(Number(target.call(name, ...given.map(plain), target.room(128)))),
    );
  }
});

test("numbers as texts in every base", async () => {
  const target = await cLibrary();
  const cases: readonly Case[] = [
    ...[2, 8, 10, 16, 36, 1, 37].flatMap((base): Case[] => [
      ["itoa", -32768, base],
      ["itoa", 12345, base],
      ["utoa", 65535, base],
      ["ltoa", long(-2147483647), base],
      ["ultoa", long(0x7ee4d213), base],
    ]),
  ].map(([name, value, base]): Case => [name, value ?? 0, base ?? 0]);
  await compare(
    cases,
    (call) => `buffer[0] = 0; line(${call.replace(/, (\d+)\)$/, ", buffer, $1)")});`,
    (name, value = 0, base = 0) =>
      target.text(Number(target.call(name, plain(value), target.room(64), plain(base)))),
  );
});

test("integers out of texts, of characters and of comparisons", async () => {
  const target = await cLibrary();
  const texts = [
    "42",
    " -17x",
    "+5",
    "",
    "x",
    "99999",
    "-40000",
    "4294967297",
    "\t\n12",
    "- 3",
    "0x1f",
    "077",
  ];
  const codes = [0, 9, 10, 31, 32, 47, 48, 57, 65, 70, 71, 90, 97, 102, 122, 127, 128, 255, 300, -1];
  const cases: readonly Case[] = [
    ...texts.flatMap((text): Case[] => [
      ["atoi", text],
      ["atol", text],
      ...[0, 8, 10, 16, 36].flatMap((base): Case[] => [
        ["strtol", text, 0, base],
        ["strtoul", text, 0, base],
      ]),
    ]),
    ...codes.flatMap((code): Case[] => [
      ["tolower", code],
      ["toupper", code],
      ["toascii", code],
    ]),
    ["strcmp", "abc", "abd"],
    ["strcmp", "a", ""],
    ["strcmp", "\u00ff", "a"],
    ["strncmp", "abcd", "abzz", 2],
    ["strncmp", "abcd", "abzz", 3],
    ["strcasecmp", "MOUSE", "mousf"],
    ["strncasecmp", "MOUSE", "mousf", 4],
    ["strncasecmp", "MOUSE", "mousf", 5],
    ["strspn", "aabbc", "ab"],
    ["strspn", "ab", "ab"],
    ["strcspn", "a,b", ",;"],
    ["strcspn", "ab", ",;"],
    ["strpbrk", "ab", ",;"],
    ["strcasestr", "ab", "C"],
    ["memcmp", "abc", "abd", 3],
    ["memcmp", "z", "\u0001", 1],
    ["abs", -5],
    ["labs", long(-70000)],
    ["strlen", "mouse"],
    ["strnlen", "mouse", 3],
  ];
  const inLatin = (call: string) => call.replace("\u00ff", "\\377").replace("\\u0001", "\\001");
  for (let first = 0; first < cases.length; first += 80) {
    await compare(
      cases.slice(first, first + 80),
      (call) => `whole(${inLatin(call)});`,
      // `whole` takes a `long`.
      (name, ...given) => String(Number(target.call(name, ...given.map(plain))) | 0),
    );
  }
});

const tests = "alnum alpha ascii blank cntrl digit graph lower print punct space upper xdigit".split(" ");

test("kinds of characters", async () => {
  const target = await cLibrary();
  const statement = `for (int c = 0; c < 256; c++) out(is$(c) ? '1' : '0'); out('\\n');`;
  const theirs = await sent(tests.map((name) => statement.replace("$", name)));
  const ours = tests.map((name) =>
    Array.from({ length: 256 }, (_, code) => (target.call(`is${name}`, code) === 0 ? "0" : "1")).join(""),
  );
  expect(ours).toEqual(theirs);
});

test("random numbers", async () => {
  const target = await cLibrary();
  const seeds: readonly (Case | undefined)[] = [
    undefined,
    ["srand", 1],
    ["srand", 0],
    ["srand", 54321],
    ["srandom", long(0)],
    ["srandom", long(123456789)],
    ["srandom", long(-5)],
    ["srandom", long(0x7fffffff)],
  ];
  const statements = seeds.map((seed) => {
    const call = seed === undefined ? "" : `${seed[0]}(${seed.slice(1).map(inC).join()});`;
    return `${call} for (int i = 0; i < 5; i++) { whole(rand()); whole(random()); }`;
  });
  const ours = seeds.flatMap((seed) => {
    if (seed !== undefined)
      target.call(
        seed[0],
        ...seed
          .slice(1)
          .map(plain)
          .map((value) => Number(value) >>> 0),
      );
    return Array.from({ length: 5 }, () => [target.call("rand"), target.call("random")])
      .flat()
      .map(String);
  });
  expect(ours).toEqual(await sent(statements));
});

test("checksums", async () => {
  const target = await cLibrary();
  const names =
    "_crc16_update _crc_xmodem_update _crc_ccitt_update _crc_ibutton_update _crc8_ccitt_update".split(" ");
  const cases = names.flatMap((name) =>
    [
      [0, 0x31],
      [0xff, 0xa5],
      [0x5a, 0xff],
      [0xffff, 0x7e],
      [0x1234, 0x80],
    ].map(
      ([crc = 0, data = 0]): Case => [
        name,
        name.includes("8_") || name.includes("ibutton") ? crc & 0xff : crc,
        data,
      ],
    ),
  );
  const parities = [0, 1, 3, 7, 128, 255, 254].map((value): Case => ["parity_even_bit", value]);
  await compare(
    [...cases, ...parities],
    (call) => `{ volatile long held = (long)(unsigned)(${call}); whole(held); }`,
    (name, ...given) => String(target.call(name, ...given.map(plain))),
  );
});

test("the compiler's own functions on bits", async () => {
  const target = await cLibrary();
  const wide = { "": "int", l: "long", ll: "long long" } as const;
  const numbers = [1, 2, 3, 0x80, 0xff, 0x1234, 0x7ffe, 0x8000, 0xffff];
  const cases = Object.entries(wide).flatMap(([suffix, type]) =>
    ["ffs", "clz", "ctz", "popcount", "parity"].flatMap((name) =>
      [...numbers, ...(suffix === "" ? [] : [0x10000, 0x80402010]), ...(/c[lt]z/.test(name) ? [] : [0])].map(
        (value) => [`__builtin_${name}${suffix}`, `unsigned ${type}`, value] as const,
      ),
    ),
  );
  const swaps = [
    ["__builtin_bswap16", "unsigned int", 0x1234],
    ["__builtin_bswap32", "unsigned long", 0x1234567f],
    ["__builtin_avr_swap", "unsigned char", 0xa5],
  ] as const;
  const all = [...cases, ...swaps];
  const shown = (text: string, index: number) => `${all[index]?.[0]}(${all[index]?.[2]}) = ${text}`;
  const theirs = await sent(
    // What is volatile is computed on the chip, by libgcc.
    all.map(([name, type, value]) => `{ volatile ${type} held = ${value}UL; whole((long)${name}(held)); }`),
  );
  const ours = all.map(([name, , value]) => String(Number(target.call(name, value)) | 0));
  expect(ours.map(shown)).toEqual(theirs.map(shown));
});

test("exact mathematics", async () => {
  const target = await cLibrary();
  const numbers = [0, 0.25, 0.5, 1.5, 2.5, -0.5, -1.5, -2.5, 2, 9, 1e6, 8388609, -3.75, 4.999];
  const cases = numbers.flatMap((number): Case[] => [
    ...["ceil", "floor", "trunc", "round", "fabs", "square"].map((name): Case => [name, double(number)]),
    ...(number < 0 ? [] : [["sqrt", double(number)] as const]),
    ["fmod", double(number), double(0.75)],
    ["fmin", double(number), double(1)],
    ["fmax", double(number), double(1)],
    ["fdim", double(number), double(1)],
    ["copysign", double(number), double(-1)],
    ["ldexp", double(number), 3],
    ["lround", double(number)],
    ["lrint", double(number)],
    ["atof", String(number)],
  ]);
  const hex = (value: number) => {
    const view = new DataView(new ArrayBuffer(4));
    view.setFloat32(0, value);
    return view.getUint32(0).toString(16);
  };
  for (let first = 0; first < cases.length; first += 60) {
    await compare(
      cases.slice(first, first + 60),
      (call) => `{ ${/^called_lr/.test(call) ? "whole" : "bits"}(${call}); }`,
      (name, ...given) => {
        const result = Number(target.call(name, ...given.map(plain)));
        return name === "lround" || name === "lrint" ? String(result) : hex(result);
      },
    );
  }
});
