import { describe, expect, test } from "vitest";
import { complaints, preprocessed } from "./check-syntax.ts";
import { prototypes, readWithStandIns, spell } from "./stand-in-text.ts";

/*
 * Our headers beside those of avr-libc 2.0, both in one program that avr-gcc has to accept: the same prototypes,
 * the same types, constants of the same value and type.
 */
const headers = [
  "assert.h",
  "ctype.h",
  "errno.h",
  "float.h",
  "inttypes.h",
  "limits.h",
  "math.h",
  "stdarg.h",
  "stdbool.h",
  "stddef.h",
  "stdint.h",
  "stdio.h",
  "stdlib.h",
  "string.h",
  "avr/cpufunc.h",
  "avr/eeprom.h",
  "avr/interrupt.h",
  "avr/io.h",
  "avr/pgmspace.h",
  "avr/power.h",
  "avr/sleep.h",
  "avr/wdt.h",
  "util/crc16.h",
  "util/delay.h",
  "util/delay_basic.h",
];
const chip = "atmega328p";
const options = [`-mmcu=${chip}`, "-std=gnu11", "-DF_CPU=16000000UL", "-O1", "-x", "c"];
const includes = headers.map((header) => `#include <${header}>\n`).join("");
const unit = readWithStandIns(chip, "c", headers);

/** Functions here, macros there, or the compiler's own: they cannot be declared a second time. */
const notFunctionsThere =
  /^(?:power_|clock_prescale_[gs]et|set_sleep_mode|sleep_|wdt_|__builtin_avr_|is(?:nan|inf|finite|alpha|ascii)|errno)/;

describe("prototypes", () => {
  const all = prototypes(unit).filter((text) => !/\berrno\b/.test(text));
  const nameOf = (text: string) => /(\w+) \(/.exec(text)?.[1] ?? "";
  const real = preprocessed("avr-gcc", options, includes);
  const compared = all.filter((text) => !notFunctionsThere.test(nameOf(text)) && real.includes(nameOf(text)));

  test("agree with those of the real headers", () => {
    expect(compared.length).toBeGreaterThan(100);
    const program = compared.map((text, index) => `# ${index + 1} "${nameOf(text)}"\n${text}`).join("\n");
    expect(complaints("avr-gcc", [...options, "-fpreprocessed"], `${real}\n${program}\n`)).toBe("");
  });

  test("name nothing that the real headers do not know", () => {
    const names = preprocessed("avr-gcc", [...options, "-dD"], includes);
    const unknown = all.map(nameOf).filter((name) => !new RegExp(`\\b${name}\\b`).test(names));
    expect(unknown.filter((name) => !name.startsWith("__builtin_"))).toEqual([]);
  });
});

describe("constants", () => {
  const isConstant =
    /^(?:U?INT\w*_(?:MAX|MIN)|SIZE_MAX|PTRDIFF_\w+|\w*CHAR_\w+|\w+_(?:MAX|MIN)|WDTO_\w+|SLEEP_MODE_\w+|_FDEV_\w+|EOF|E[DR]\w+)$/;
  const names = unit.macros
    .filter(({ name, parameters }) => parameters === undefined && isConstant.test(name))
    .map(({ name }) => name);
  const expansions = new Map<string, string>();
  for (const name of names) {
    const { tokens } = readWithStandIns(chip, "c", headers, `value_begins ${name}`);
    const begin = tokens.findIndex((token) => token.text === "value_begins");
    expansions.set(name, spell(tokens.slice(begin + 1)));
  }

  test("have the value and the type of the real ones", () => {
    expect(names.length).toBeGreaterThan(60);
    const program = names.map((name) => {
      const ours = expansions.get(name) ?? "";
      return `_Static_assert((${ours}) == (${name}), "value of ${name}");
_Static_assert(__builtin_types_compatible_p(__typeof__(${ours}), __typeof__(${name})), "type of ${name}");`;
    });
    expect(complaints("avr-gcc", options, `${includes}${program.join("\n")}\n`)).toBe("");
  });

  test("conversion words for printing are the same", () => {
    const words = unit.macros.filter(({ name }) => /^PRI/.test(name));
    const program = words.map(
      ({ name, body }, index) =>
        `_Static_assert(__builtin_strcmp(${spell(body)}, ${name}) == 0, "${name}"); int used${index};`,
    );
    expect(words.length).toBeGreaterThan(15);
    expect(complaints("avr-gcc", options, `${includes}${program.join("\n")}\n`)).toBe("");
  });
});

test("types are the same as those of the real headers", () => {
  const types = spell(readWithStandIns(chip, "c", ["stdint.h", "stddef.h"]).tokens);
  const names = [...types.matchAll(/(\w+_t) ;/g)].map(([, name = ""]) => name);
  const renamed = types.replace(/\b(\w+_t)\b/g, "our_$1");
  const checks = names.map(
    (name) => `_Static_assert(__builtin_types_compatible_p(${name}, our_${name}), "${name}");`,
  );
  expect(names).toContain("uint16_t");
  expect(complaints("avr-gcc", options, `${includes}${renamed}\n${checks.join("\n")}\n`)).toBe("");
});
