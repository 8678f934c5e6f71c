import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { chip } from "../../../../src-core/model/chips.ts";
import { ChunkCache } from "../../../../src-core/reader/chunks/chunk.ts";
import { splitChunks } from "../../../../src-core/reader/chunks/split-chunks.ts";
import { standIns } from "../../../../src-core/reader/headers/stand-ins.ts";
import { predefinedMacros } from "../../../../src-core/reader/preprocess/predefined.ts";
import { preprocess } from "../../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import type { Preprocessed } from "../../../../src-core/reader/tokens.ts";

/*
 * Whatever is typed, reading ends, throws nothing, and every place it gives lies in its file. The sources are the
 * macro programs of tests/oracle and a firmware of the sample workspace.
 */
const programs = join(import.meta.dirname, "../../../oracle/preprocess/programs");
const firmware = join(import.meta.dirname, "../../../../sample-workspace/ferry-c/ps2.c");
const target = chip("atmega328p");
const cache = new PreprocessCache();
const chunkCache = new ChunkCache();

function readSource(text: string): Preprocessed {
  const unit = preprocess({
    host: hostOfFiles({ "main.c": text }),
    mains: ["main.c"],
    prelude: [],
    language: "c",
    defines: predefinedMacros(target, "c", 16_000_000),
    includePaths: [],
    standIns: standIns(target, "c"),
    cache,
  });
  for (const { span } of [...unit.problems, ...unit.missing]) expect(isInside(span, text)).toBe(true);
  for (const token of unit.tokens) {
    if (token.file === "main.c" && !isInside(token, text)) throw new Error(`${token.text} at ${token.start}`);
  }
  const chunks = splitChunks({ tokens: unit.tokens, textOf: () => text, cache: chunkCache });
  expect(chunks.reduce((sum, chunk) => sum + chunk.tokens.length, 0)).toBe(unit.tokens.length);
  return unit;
}

function isInside({ start, end }: { readonly start: number; readonly end: number }, text: string): boolean {
  return start >= 0 && start <= end && end <= text.length;
}

/** A repeatable row of numbers below a limit (linear congruential, as in C11 7.22.2.2). */
function numbers(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return (state >>> 8) % below;
  };
}

const macroPrograms = readdirSync(programs)
  .filter((name) => name.endsWith(".c"))
  .map((name) => readFileSync(join(programs, name), "utf8"));

describe("every prefix", () => {
  test("of every sixth macro program", () => {
    for (const text of macroPrograms.filter((_, index) => index % 6 === 0)) {
      for (let length = 0; length <= text.length; length += 1) readSource(text.slice(0, length));
    }
  });

  test("of the beginning of a firmware", () => {
    const text = readFileSync(firmware, "utf8").slice(0, 2500);
    for (let length = 0; length <= text.length; length += 1) readSource(text.slice(0, length));
  });
});

describe("random edits", () => {
  const pieces = [
    "(",
    ")",
    "#",
    "##",
    "\\\n",
    '"',
    "'",
    "/*",
    "*/",
    "//",
    "\n#if ",
    "\n#endif\n",
    "\n#define f(x) ",
    "{",
    "}",
    "\u0000",
    "\ufffd",
    "\r",
    "__VA_OPT__(",
    'R"(',
  ];

  test.each([1, 2, 3, 4, 5])("of a firmware, seed %i", (seed) => {
    const next = numbers(seed);
    let text = readFileSync(firmware, "utf8");
    for (let round = 0; round < 60; round += 1) {
      const at = next(text.length);
      const piece = pieces[next(pieces.length)] ?? "";
      text = text.slice(0, at) + (next(3) === 0 ? "" : piece) + text.slice(at + next(4));
      readSource(text);
    }
  });

  test.each([6, 7, 8])("of the macro programs, seed %i", (seed) => {
    const next = numbers(seed);
    for (const original of macroPrograms) {
      let text = original;
      for (let round = 0; round < 20; round += 1) {
        const at = next(text.length + 1);
        text = text.slice(0, at) + (pieces[next(pieces.length)] ?? "") + text.slice(at + next(3));
        readSource(text);
      }
    }
  });

  test("random bytes", () => {
    const next = numbers(9);
    for (let round = 0; round < 200; round += 1) {
      const bytes = Uint8Array.from({ length: 300 }, () => next(256));
      readSource(new TextDecoder().decode(bytes));
    }
  });
});

test("five megabytes of code", () => {
  const part = "static int f(int a) { return a + 1; }\n";
  const { tokens, problems } = readSource(part.repeat(Math.ceil(5_000_000 / part.length)));
  expect(tokens.length).toBeGreaterThan(1_800_000);
  expect(problems).toEqual([]);
});

describe("hundreds of kilobytes", () => {
  const size = 300_000;

  test.each([
    ["of one line", "a + "],
    ["of macro definitions", "#define A(x) (x + 1)\n"],
    ["of macro calls", "#define A(x) (x + 1)\nA(A(2)) "],
    ["of open conditionals", "#if 1\n"],
    ["of open strings", '"a\n'],
    ["of spliced lines", "a;\\\nb \\\n"],
    ["of comments", "/* a */ // b\n"],
    ["of open parentheses", "f("],
    ["of open braces", "{"],
    ["of problems", "#bad\n"],
  ])("%s", (_name, part) => {
    const text = part.repeat(Math.ceil(size / part.length));
    expect(readSource(text).tokens.length).toBeGreaterThanOrEqual(0);
  });

  test("in one name and one comment", () => {
    expect(readSource("a".repeat(5_000_000)).tokens.length).toBe(1);
    expect(readSource(`/*${"a".repeat(5_000_000)}`).tokens.length).toBe(0);
  });
});
