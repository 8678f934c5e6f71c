import { describe, expect, test } from "vitest";
import { readFiles, readText, spell } from "./read.ts";

/* Bounds are ours; general-purpose compilers stop includes at the same depth (GCC manual, -fmax-include-depth). */

describe("includes without end", () => {
  test("a file that includes itself: bounded, and said once", () => {
    const { tokens, problems } = readFiles({ "main.c": '#include "main.c"\nx' });
    expect(tokens.length).toBe(200);
    expect(problems.map(({ message }) => message)).toEqual([
      "Includes nest deeper than 200 files at main.c; does a file include itself?",
    ]);
  });

  test("a file that includes itself twice", () => {
    const { tokens, problems } = readFiles({ "main.c": '#include "main.c"\n#include "main.c"\nx' });
    expect(tokens.length).toBeLessThan(100_000);
    expect(problems.map(({ message }) => message)).toEqual([
      "Includes nest deeper than 200 files at main.c; does a file include itself?",
      "The unit grows without end at main.c; files included from here on are left out.",
    ]);
  });

  test("two files in a circle", () => {
    const { problems } = readFiles({
      "main.c": '#include "a.h"',
      "a.h": '#include "b.h"',
      "b.h": '#include "a.h"',
    });
    expect(problems.length).toBe(1);
  });
});

describe("macros without end", () => {
  const doubling = Array.from({ length: 64 }, (_, level) => `#define A${level + 1} A${level} A${level}`).join(
    "\n",
  );

  test("each twice as long as the one before", () => {
    const { tokens, problems } = readText(`#define A0 x\n${doubling}\nA64\nafter`);
    expect(tokens.length).toBeLessThan(2_000_000);
    expect(tokens.at(-1)?.text).toBe("after");
    expect(problems.length).toBe(1);
    expect(problems[0]?.message).toMatch(/^Macros expand to more than 1000000 tokens by A\d+; from here on/);
  });

  test("arguments that double", () => {
    const macros = "#define D(x) x x\n#define E(x) D(D(D(D(x))))\n#define F(x) E(E(E(E(E(E(E(x)))))))\n";
    const { tokens, problems } = readText(`${macros}F(y)\nafter`);
    expect(tokens.at(-1)?.text).toBe("after");
    expect(problems.length).toBe(1);
  });

  test("names and strings that double", () => {
    const levels = Array.from(
      { length: 60 },
      (_, level) => `#define C${level}(x) C${level + 1}(x ## x)`,
    ).join("\n");
    const { tokens, problems } = readText(`${levels}\n#define C60(x) x\nC0(ab)\nafter`);
    expect(tokens.at(-1)?.text).toBe("after");
    expect(problems.length).toBe(1);
    expect(Math.max(...tokens.map(({ text }) => text.length))).toBeLessThan(20_000_000);
  });

  test("calls nested ten thousand deep", () => {
    const { tokens, problems } = readText(
      `#define f(x) x\n${"f(".repeat(10_000)}1${")".repeat(10_000)}\nafter`,
    );
    expect(tokens.at(-1)?.text).toBe("after");
    expect(problems.length).toBeGreaterThan(0);
  });

  test("many calls that are never closed", () => {
    const { tokens } = readText(`#define f(x) x\n${"f(\n".repeat(20_000)}`);
    expect(tokens.length).toBe(40_000);
  });

  test("a macro that grows by calling on through the text behind it", () => {
    const { tokens } = readText(`#define f(x) x f\nf${"(1)".repeat(5_000)} end`);
    expect(spell(tokens.slice(-1))).toBe("end");
  });
});

test("thousands of problems: the first five hundred are said", () => {
  const { problems } = readText("#error no\n".repeat(3000));
  expect(problems.length).toBe(500);
});
