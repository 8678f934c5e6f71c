import { describe, expect, it } from "vitest";
import { matchesGlob } from "../../../src-core/project/glob.ts";

/**
 * `*`, `?`: POSIX.1-2017, Shell & Utilities, 2.13 Pattern Matching Notation (a slash is matched by neither).
 * `**` for any number of folders: common practice, no source.
 */
const CASES: readonly (readonly [string, string, boolean])[] = [
  ["*.c", "main.c", true],
  ["*.c", "main.cpp", false],
  ["*.c", "lib/main.c", false],
  ["*", "a/b", false],
  ["?.c", "a.c", true],
  ["?.c", "ab.c", false],
  ["a?b", "a/b", false],
  ["src/*.c", "src/a.c", true],
  ["src/*/a.c", "src/a.c", false],
  ["src/**/*.c", "src/a.c", true],
  ["src/**/*.c", "src/x/y/a.c", true],
  ["src/**/*.c", "srcs/a.c", false],
  ["**/*.c", "a.c", true],
  ["**/x/**/a.c", "x/a.c", true],
  ["**", "a/b/c", true],
  ["./*.c", "main.c", true],
  ["main.c", "main.c", true],
  ["main.c", "mainxc", false],
  ["[a].c", "[a].c", true],
  ["*a*b*", "xxaxxbxx", true],
  ["*a*b", "ab.c", false],
  ["", "a", false],
];

describe("globs of sources", () => {
  for (const [pattern, path, fits] of CASES) {
    it(`${JSON.stringify(pattern)} ${fits ? "fits" : "does not fit"} ${path}`, () => {
      expect(matchesGlob(pattern, path)).toBe(fits);
    });
  }

  it("does not go through every combination of stars", () => {
    expect(matchesGlob("*a".repeat(40), "a".repeat(4000))).toBe(true);
    expect(matchesGlob(`${"**/".repeat(30)}x`, "a/".repeat(300))).toBe(false);
  });
});
