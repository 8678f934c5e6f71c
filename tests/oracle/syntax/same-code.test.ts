import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { loadGrammar } from "../../src-core/reader/syntax/load-grammar.ts";
import { tokenize } from "../../src-core/reader/syntax/tokenize.ts";
import { assembled, type Compiler, preprocessed, rewritten } from "./compile.ts";

/**
 * Sources are read, written again from their trees and compiled: the compiler has to make the same code of
 * both. What the trees cannot hold is copied, and listed here as the only thing that may be.
 */
const grammar = await loadGrammar();
const avr = ["-mmcu=atmega328p", "-DF_CPU=16000000UL"];
const avrC: Compiler = { command: "avr-gcc", flags: [...avr, "-std=gnu11"], language: "c" };

function expectSameCode(compiler: Compiler, text: string, allowed: readonly string[] = []): void {
  const { source, syntax } = rewritten(grammar, compiler.language, text);
  const tokens = tokenize(text);
  const copied = syntax.notUnderstood.map(({ first, end }) =>
    tokens
      .slice(first, end)
      .map((token) => token.text)
      .join(" "),
  );
  expect(copied.filter((each) => !allowed.includes(each))).toEqual([]);
  expect(assembled(compiler, source)).toBe(assembled(compiler, text));
}

describe("the sample firmware in C", () => {
  const files = ["ferry-c", "ferry-c-faults"].flatMap((folder) =>
    readdirSync(join("sample-workspace", folder))
      .filter((name) => name.endsWith(".c"))
      .map((name) => join("sample-workspace", folder, name)),
  );
  test.each(files)("%s", (file) => {
    expectSameCode(avrC, preprocessed(avrC, file));
  });
});

describe("the sketch core, as Debian's arduino-core-avr has it", () => {
  const core = "/usr/share/arduino/hardware/arduino/avr";
  const include = [`-I${core}/cores/arduino`, `-I${core}/variants/standard`, `-I${core}/libraries/Wire/src`];
  const flags = [...avr, "-DARDUINO=10800", ...include, `-I${core}/libraries/SPI/src`];
  const cpp: Compiler = {
    command: "avr-g++",
    flags: [...flags, "-std=gnu++14", "-fpermissive"],
    language: "c++",
  };
  const c: Compiler = { command: "avr-gcc", flags: [...flags, "-std=gnu11"], language: "c" };
  // Pointers to members, which the trees have no word for.
  const allowed = ["typedef void ( String :: * StringIfHelperType ) ( ) const ;"];
  test.each([
    "cores/arduino/HardwareSerial.cpp",
    "cores/arduino/HardwareSerial0.cpp",
    "cores/arduino/IPAddress.cpp",
    "cores/arduino/Print.cpp",
    "cores/arduino/Stream.cpp",
    "cores/arduino/Tone.cpp",
    "cores/arduino/WMath.cpp",
    "cores/arduino/abi.cpp",
    "cores/arduino/main.cpp",
    "cores/arduino/new.cpp",
    "libraries/SPI/src/SPI.cpp",
    "libraries/Wire/src/Wire.cpp",
  ])("%s", (file) => {
    expectSameCode(cpp, preprocessed(cpp, join(core, file)), allowed);
  });
  test.each([
    "cores/arduino/WInterrupts.c",
    "cores/arduino/wiring.c",
    "cores/arduino/wiring_analog.c",
    "cores/arduino/wiring_digital.c",
    "cores/arduino/wiring_pulse.c",
    "cores/arduino/wiring_shift.c",
    "libraries/Wire/src/utility/twi.c",
  ])("%s", (file) => {
    expectSameCode(c, preprocessed(c, join(core, file)));
  });
});

describe("programs of csmith", () => {
  test.each([101, 102, 103, 104, 105, 106])("seed %i", (seed) => {
    const folder = mkdtempSync(join(tmpdir(), "csmith-"));
    try {
      const file = join(folder, "program.c");
      const program = execFileSync("csmith", ["--seed", String(seed), "--max-funcs", "4"], {
        // It leaves a note about the machine in the folder it runs in.
        cwd: folder,
        encoding: "utf8",
      });
      writeFileSync(file, program);
      const compiler: Compiler = { command: "gcc", flags: ["-I/usr/include/csmith"], language: "c" };
      expectSameCode(compiler, preprocessed(compiler, file));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
