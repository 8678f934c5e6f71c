import { describe, expect, test } from "vitest";
import { preprocess } from "../../../../src-core/reader/preprocess/preprocess.ts";
import { PreprocessCache } from "../../../../src-core/reader/preprocess/preprocess-cache.ts";
import { hostOfFiles } from "../../../../src-core/reader/source-host.ts";
import type { Preprocessed } from "../../../../src-core/reader/tokens.ts";
import { spell } from "./read.ts";

/*
 * A cache may only change how long reading takes. Each step is read with one cache that saw all steps before,
 * and with a fresh one; both have to tell the same.
 */

interface Step {
  readonly files: Readonly<Record<string, string>>;
  readonly standIns: Readonly<Record<string, string>>;
}

function readStep({ files, standIns }: Step, cache: PreprocessCache): Preprocessed {
  return preprocess({
    host: hostOfFiles(files),
    mains: ["main.c"],
    prelude: [],
    language: "c",
    defines: {},
    includePaths: ["lib"],
    standIns: (name) => standIns[name],
    cache,
  });
}

function summary({ tokens, macros, problems, missing, uses }: Preprocessed) {
  const macroText = [...macros].map(([name, { body }]) => `${name}: ${spell(body)}`).sort();
  return { text: spell(tokens), macroText, problems, missing, uses };
}

const standIns = {
  "io.h":
    "#ifndef IO\n#define IO\n#include <types.h>\n#ifdef SMALL\n#define PORT 1\n#else\n#define PORT 2\n#endif\nu8 io;\n#endif",
  "types.h": "#pragma once\ntypedef char u8;\n#define BYTES SIZE * 2",
  "baud.h":
    "#undef RATE\n#if SPEED > 100\n#define RATE fast\n#else\n#define RATE slow\n#endif\n#ifndef SPEED\n#error no speed\n#endif",
  "count.h": "int unique = __COUNTER__;",
};

const steps: readonly (readonly [string, string, Readonly<Record<string, string>>?])[] = [
  ["first reading", "#include <io.h>\nPORT BYTES"],
  ["the same again", "#include <io.h>\nPORT BYTES"],
  ["a macro that the header asks for", "#define SMALL\n#include <io.h>\nPORT"],
  ["without it again", "#include <io.h>\nPORT"],
  ["a macro that changes the header's words", "#define u8 other\n#include <io.h>\nu8"],
  ["a header read before by itself", "#include <types.h>\n#include <io.h>\nPORT"],
  ["both twice", "#include <io.h>\n#include <types.h>\n#include <io.h>\nPORT"],
  [
    "a header that asks anew each time",
    "#define SPEED 50\n#include <baud.h>\nRATE\n#undef SPEED\n#define SPEED 500\n#include <baud.h>\nRATE",
  ],
  ["a header that says something", "#include <baud.h>\nRATE"],
  ["and says it again", "x\n#include <baud.h>\nRATE"],
  ["a counter", "#include <count.h>\n#include <count.h>\n__COUNTER__"],
  ["a guard set by hand", "#define IO\n#include <io.h>\nPORT"],
  ["a workspace file in place of a nested header", "#include <io.h>\nPORT BYTES", { "lib/types.h": "mine" }],
  ["and taken away again", "#include <io.h>\nPORT BYTES"],
  ["a macro undefined that the header defines", "#include <io.h>\n#undef PORT\n#include <types.h>\nPORT"],
];

describe("with a cache from earlier readings", () => {
  const kept = new PreprocessCache();
  test.each(steps.map(([name, text, others]) => ({ name, text, others })))("$name", ({ text, others }) => {
    const step = { files: { ...(others ?? {}), "main.c": text }, standIns };
    expect(summary(readStep(step, kept))).toEqual(summary(readStep(step, new PreprocessCache())));
  });

  test("a built-in header whose text changes", () => {
    for (const body of ["one", "two", "one"]) {
      const step = { files: { "main.c": "#include <io.h>" }, standIns: { "io.h": body } };
      expect(spell(readStep(step, kept).tokens)).toBe(body);
    }
  });

  test("a nested built-in header whose text changes", () => {
    for (const body of ["one", "two", "one"]) {
      const step = { files: { "main.c": "#include <io.h>" }, standIns: { ...standIns, "types.h": body } };
      expect(spell(readStep(step, kept).tokens)).toContain(body);
    }
  });
});

test("tokens of an unchanged built-in header are the same objects", () => {
  const cache = new PreprocessCache();
  const first = readStep({ files: { "main.c": "#include <io.h>\nx" }, standIns }, cache);
  const second = readStep({ files: { "main.c": "#include <io.h>\ny" }, standIns }, cache);
  expect(second.tokens.slice(0, -1)).toEqual(first.tokens.slice(0, -1));
  expect(second.tokens[0]).toBe(first.tokens[0]);
});
