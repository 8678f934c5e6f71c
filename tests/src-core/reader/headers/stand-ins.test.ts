import { describe, expect, test } from "vitest";
import { avrChipNamed, chip, chipNames } from "../../../../src-core/model/chips.ts";
import { standInNames, standIns } from "../../../../src-core/reader/headers/stand-ins.ts";
import type { Language } from "../../../../src-core/reader/lexer/scanner.ts";
import { predefinedMacros, sketchMacros } from "../../../../src-core/reader/preprocess/predefined.ts";
import { preprocess } from "../../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import type { Preprocessed } from "../../../../src-core/reader/tokens.ts";
import { spell } from "../preprocess/read.ts";

const cache = new PreprocessCache();

function read(
  chipName: string | undefined,
  language: Language,
  text: string,
  defines: Readonly<Record<string, string>> = {},
): Preprocessed {
  const target = chipName === undefined ? undefined : chip(chipName);
  return preprocess({
    host: hostOfFiles({ "main.c": text }),
    mains: ["main.c"],
    prelude: [],
    language,
    defines: { ...predefinedMacros(target, language, undefined), ...sketchMacros(target), ...defines },
    includePaths: [],
    standIns: standIns(target, language),
    cache,
  });
}

/** What stands behind the includes. */
function own({ tokens }: Preprocessed): string {
  return spell(tokens.filter((token) => token.file === "main.c" || token.macro !== undefined).slice(-60));
}

function value(chipName: string, headers: readonly string[], expression: string): string {
  const text = `${headers.map((header) => `#include <${header}>\n`).join("")}value_begins ${expression}`;
  const { tokens, problems } = read(chipName, "c++", text);
  expect(problems).toEqual([]);
  const begin = tokens.findIndex((token) => token.text === "value_begins");
  return spell(tokens.slice(begin + 1)).replaceAll(" ", "");
}

/** The chips whose registers are known, one without a model of its registers, two with 32-bit int, none. */
const someChips = [
  ...chipNames.filter((name) => avrChipNamed(name) !== undefined),
  ...["atmega4809", "stm32f103c8", "rp2040", undefined],
];

describe.each(someChips)("headers for %s", (name) => {
  test.each<Language>(["c", "c++"])(
    "each is read without a problem, alone and after all others, in %s",
    (language) => {
      const find = standIns(name === undefined ? undefined : chip(name), language);
      const there = standInNames.filter(
        (header) => find(header) !== undefined && header !== "util/setbaud.h",
      );
      const all = there.map((header) => `#include <${header}>\n`).join("");
      for (const header of there) {
        const { problems, missing } = read(name, language, `#include <${header}>`);
        expect({ header, problems, missing }).toEqual({ header, problems: [], missing: [] });
      }
      const once = read(name, language, all);
      const twice = read(name, language, all + all);
      expect(once.problems).toEqual([]);
      expect(twice.tokens.length).toBe(once.tokens.length);
    },
  );
});

describe("registers (ATmega48A/PA/88A/PA/168A/PA/328/P datasheet 8271, Register Summary)", () => {
  test.each([
    ["UBRR0", "(*(volatileuint16_t*)0xC4)"],
    ["UBRR0L", "(*(volatileuint8_t*)0xC4)"],
    ["UCSR0A", "(*(volatileuint8_t*)0xC0)"],
    ["UCSR0C", "(*(volatileuint8_t*)0xC2)"],
    ["PORTD", "(*(volatileuint8_t*)0x2B)"],
    ["&PIND", "&(*(volatileuint8_t*)0x29)"],
    ["_BV(UCSZ01)", "(1<<(2))"],
    ["_BV(TXEN0)", "(1<<(3))"],
    ["PCINT18", "2"],
    ["PD2", "2"],
    ["DDD3", "3"],
    ["RAMEND", "0x8FF"],
  ])("%s is %s", (name, expansion) => {
    expect(value("atmega328p", ["avr/io.h"], name)).toBe(expansion);
  });
});

test("an interrupt function is named after its vector (same datasheet, Interrupt Vectors: INT0 is the second)", () => {
  const text = "#include <avr/interrupt.h>\nISR(INT0_vect) { }";
  const { tokens } = read("atmega328p", "c", text);
  const name = tokens.findLast((token) => token.text === "__vector_1");
  expect(name?.macro?.name).toBe("INT0_vect");
  expect(own(read("atmega328p", "c", text))).toMatch(/signal.* ; void __vector_1 \( void \) \{ \}$/);
  expect(own(read("atmega328p", "c++", text))).toMatch(/extern "C" void __vector_1/);
});

describe("pins of the sketch core's boards (board pin headers of the sketch core 1.8)", () => {
  test.each([
    ["atmega328p", "digitalPinToInterrupt(2)", "((2)==2?0:(2)==3?1:-1)"],
    ["atmega328p", "LED_BUILTIN", "13"],
    ["atmega328p", "PIN_A0", "(14)"],
    ["atmega328p", "PIN_A7", "(21)"],
    ["atmega328p", "NUM_DIGITAL_PINS", "20"],
    ["atmega2560", "PIN_A0", "(54)"],
    ["atmega32u4", "PIN_A6", "(24)"],
    ["atmega328p", "SERIAL_7N1", "0x04"],
    ["atmega328p", "SERIAL_8N1", "0x06"],
    ["atmega328p", "SERIAL_7E2", "0x2C"],
    ["atmega328p", "B00000101", "5"],
  ])("%s: %s is %s", (name, expression, expansion) => {
    expect(value(name, ["Arduino.h"], expression)).toBe(expansion);
  });
});

test("serial objects are those that the chip has UARTs or USB for", () => {
  const objects = (name: string) =>
    [...spell(read(name, "c++", "#include <Arduino.h>").tokens).matchAll(/extern (\w+) (Serial\d?) ;/g)].map(
      ([, type, object]) => `${type} ${object}`,
    );
  expect(objects("atmega328p")).toEqual(["HardwareSerial Serial"]);
  expect(objects("atmega32u4")).toEqual(["HardwareSerial Serial1", "Serial_ Serial"]);
  expect(objects("atmega2560").length).toBe(4);
  expect(objects("attiny85")).toEqual([]);
});

describe("util/setbaud.h", () => {
  /** The table of the datasheets that reaches 2 %: clock in Hz, baud, U2X, UBRR. */
  test.each([
    // ATmega328P 7810C Table 19-9.
    [1_000_000, 2400, 0, 25],
    [1_000_000, 9600, 1, 12],
    [1_843_200, 9600, 0, 11],
    // ATmega640/1280/1281/2560/2561 2549A Tables 107 and 109.
    [7_372_800, 2400, 0, 191],
    [16_000_000, 9600, 0, 103],
    [20_000_000, 4800, 0, 259],
  ])("%i Hz, %i baud: U2X=%i, UBRR=%i", (clock, baud, double, divisor) => {
    const text = `#include <util/setbaud.h>
#if UBRR_VALUE == ${divisor} && UBRRL_VALUE == ${divisor % 256} && UBRRH_VALUE == ${Math.floor(divisor / 256)}
same
#endif
USE_2X`;
    const { tokens, problems } = read("atmega328p", "c", text, { F_CPU: `${clock}UL`, BAUD: `${baud}` });
    expect(problems).toEqual([]);
    expect(spell(tokens)).toBe(`same ${double}`);
  });

  test("says what it lacks", () => {
    const { problems } = read("atmega328p", "c", "int x;\n#include <util/setbaud.h>");
    expect(problems.map(({ message, span }) => [message, span.file, span.start])).toEqual([
      ['#error "util/setbaud.h needs F_CPU: the clock in Hz"', "main.c", 7],
      ['#error "util/setbaud.h needs BAUD: the rate in bit/s"', "main.c", 7],
    ]);
  });
});

describe("avr/io.h without a chip", () => {
  const text = standIns(undefined, "c")("avr/io.h") ?? "";
  const bits = new Map(
    [...text.matchAll(/^#define (\w+) (\d+)$/gm)].map(([, name, bit]) => [name, Number(bit)]),
  );

  test.each([
    // ATmega48A/PA/88A/PA/168A/PA/328/P datasheet 8271, 20.11; ATtiny2313 datasheet 2543, USART Register Description
    ["UCSZ01", 2],
    ["UCSZ1", 2],
    ["TXEN0", 3],
    ["UDRE0", 5],
    ["U2X0", 1],
    ["PD2", 2],
    ["DDB4", 4],
  ])("numbers %s, as every chip does", (name, bit) => {
    expect(bits.get(name)).toBe(bit);
  });

  test("does not number what differs from chip to chip", () => {
    // INT0 is bit 0 of EIMSK on an ATmega328P and bit 6 of GIMSK on an ATtiny85 (their datasheets, External Interrupts)
    for (const name of ["INT0", "WGM12", "CS11"]) expect(bits.has(name), name).toBe(false);
    // A bit of UDR in avr-libc's header of the ATtiny4313, a register in that of the ATmega328P.
    expect(bits.has("UDR0")).toBe(false);
  });

  test("knows registers by name", () => {
    for (const name of ["PORTD", "DDRD", "PIND", "UCSR0C", "UCSRC", "EIMSK"])
      expect(text).toMatch(new RegExp(`\\b${name}\\b`));
  });

  test("says nothing of a chip whose registers are others", () => {
    expect(standIns(chip("atmega4809"), "c")("avr/io.h")).not.toContain("PORTD");
  });
});

describe("what is not there", () => {
  test("headers of AVR on other chips", () => {
    expect(standIns(chip("stm32f103c8"), "c")("avr/io.h")).toBeUndefined();
    expect(standIns(chip("stm32f103c8"), "c")("stdint.h")).toMatch(/typedef unsigned long uint32_t/);
  });

  test("headers of other makers, C++ headers in C, names of object properties", () => {
    for (const name of ["stm32f1xx_hal.h", "pico/stdlib.h", "cstdint", "constructor", "toString", ""]) {
      expect(standIns(chip("atmega328p"), "c")(name)).toBeUndefined();
    }
    expect(standIns(chip("atmega328p"), "c++")("cstdint")).toMatch(/#include <stdint.h>/);
    expect(standIns(chip("atmega328p"), "c++")("cvector")).toBeUndefined();
  });
});
