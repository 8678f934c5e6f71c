import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { randomSeed } from "../../random-seed.ts";
import { avrGcc, type Compiler, gcc, preprocessWith } from "./compilers.ts";
import { outputTokens } from "./output-tokens.ts";
import { randomProgram, undefineAll } from "./random-programs.ts";
import { readProgram } from "./read-program.ts";

/*
 * Programs of random macros, read by Edgewise and by the compilers. A program that the compiler has errors for
 * (a call with too many arguments, two tokens that cannot be joined) is left out: what a compiler makes of it
 * is its own affair. To try other programs, set MACRO_SEED; the names of the tests say which were tried.
 */
const COUNT = 600;
const firstSeed = randomSeed("MACRO_SEED", 714_669);
const seeds = Array.from({ length: COUNT }, (_, index) => firstSeed + index);

/** What the compiler makes of each program, undefined where it has errors. All are read in one go. */
function expectedTexts(compiler: Compiler): ReadonlyMap<number, string | undefined> {
  const folder = mkdtempSync(join(tmpdir(), "macro-programs-"));
  let whole = "";
  const lines: { readonly seed: number; readonly first: number }[] = [];
  for (const seed of seeds) {
    lines.push({ seed, first: whole.split("\n").length });
    whole += `"seed ${seed}"\n${randomProgram(seed)}${undefineAll}`;
  }
  writeFileSync(join(folder, "all.c"), whole);
  const { texts, errorLines } = preprocessWith(compiler, folder, ["all.c"]);
  rmSync(folder, { recursive: true });
  const found = new Map<number, string | undefined>();
  for (const part of (texts.get("all.c") ?? "").split(/^(?="seed \d+"$)/m)) {
    const [marker = "", ...rest] = part.split("\n");
    if (marker !== "") found.set(Number(/\d+/.exec(marker)?.[0]), rest.join("\n"));
  }
  for (const line of errorLines) {
    const owner = lines.findLast(({ first }) => first <= line);
    if (owner !== undefined) found.set(owner.seed, undefined);
  }
  return found;
}

/** avr-gcc 5.4 drops some spaces where an expanded argument becomes a string, which later versions put right. */
function withoutStringSpaces(tokens: readonly string[]): readonly string[] {
  return tokens.map((token) => (token.startsWith('"') ? token.replaceAll(" ", "") : token));
}

describe.each([gcc, avrGcc])("random programs as $name -E reads them", (compiler) => {
  const expected = expectedTexts(compiler);
  const shown = compiler.name === "avr-gcc" ? withoutStringSpaces : (tokens: readonly string[]) => tokens;

  test(`MACRO_SEED=${firstSeed}: the same text`, () => {
    let compared = 0;
    let sameTokens = 0;
    for (const seed of seeds) {
      const output = expected.get(seed);
      if (output === undefined) continue;
      const program = randomProgram(seed);
      const { tokens } = readProgram(hostOfFiles({ "random.c": program }), "random.c", []);
      const found = shown(tokens.map((token) => token.text));
      const wanted = shown(outputTokens(output));
      // The compilers print a name and a number made by pasting without a space between: `g` `22` as `g22`.
      expect({ seed, program, text: found.join("") }).toEqual({ seed, program, text: wanted.join("") });
      compared += 1;
      if (found.join(" ") === wanted.join(" ")) sameTokens += 1;
    }
    expect(compared).toBeGreaterThan(COUNT / 5);
    expect(sameTokens).toBeGreaterThan(compared * 0.95);
  });
});
