import { expect, test } from "vitest";
import { ChunkCache } from "../../../../src-core/reader/chunks/chunk.ts";
import { splitChunks } from "../../../../src-core/reader/chunks/split-chunks.ts";
import { complaints } from "./check-syntax.ts";
import { readWithStandIns, spell } from "./stand-in-text.ts";

/*
 * Every member function of our classes is taken by address, with the type we declare it with, from the real
 * class of the sketch core and its libraries (Debian package arduino-core-avr).
 */
const root = "/usr/share/arduino/hardware/arduino/avr";
const headers = ["Arduino.h", "SoftwareSerial.h", "Wire.h", "SPI.h"];
const options = [
  ...["-mmcu=atmega328p", "-DF_CPU=16000000UL", "-DARDUINO=10819", "-O1", "-x", "c++", "-std=gnu++11"],
  ...["-I", `${root}/cores/arduino`, "-I", `${root}/variants/standard`],
  ...["SoftwareSerial", "Wire", "SPI"].flatMap((library) => ["-I", `${root}/libraries/${library}/src`]),
];

/** Casts of the addresses of a class's member functions. */
function memberCasts(declaration: string): readonly string[] {
  const [, name, body] = /^class (\w+) (?:: public \w+ )?\{ public : (.*) \} ;$/.exec(declaration) ?? [];
  if (name === undefined || body === undefined) return [];
  return body
    .replace(/ protected : .*/, "")
    .split(" ;")
    .flatMap((member) => {
      const pattern = /^ ?(virtual |static )?(.*?) (\*? ?&? ?)(\w+) \( (.*?) ?\)( const)?(?: = 0)?$/;
      const [, kind, result, mark = "", method, parameters, constant = ""] = pattern.exec(member) ?? [];
      const isPlain =
        method !== undefined && !/operator|using|explicit|template|~/.test(member) && result !== "";
      if (!isPlain || parameters === undefined) return [];
      const types = parameters.replace(/ = (?:'[^']*'|\w+)/g, "");
      const pointer = kind === "static " ? "*" : `${name}::*`;
      return [`(void)static_cast<${result}${mark} (${pointer})(${types})${constant}>(&${name}::${method});`];
    });
}

test("member functions are those of the real classes", () => {
  const { tokens } = readWithStandIns("atmega328p", "c++", headers);
  const chunks = splitChunks({ tokens, textOf: () => undefined, cache: new ChunkCache() });
  const casts = chunks.flatMap(({ tokens: each }) => memberCasts(spell(each)));
  const includes = headers.map((header) => `#include <${header}>\n`).join("");
  expect(casts.length).toBeGreaterThan(120);
  expect(complaints("avr-g++", options, `${includes}void check() {\n${casts.join("\n")}\n}\n`)).toBe("");
});
