import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { avrGcc, gcc, preprocessWith } from "./compilers.ts";
import { outputTokens } from "./output-tokens.ts";
import { hostOfFolder, readProgram } from "./read-program.ts";

/*
 * Each program is read by Edgewise, by `gcc -E` and by `avr-gcc -E`, and the tokens have to be the same. A
 * program that begins with "gcc only" uses what avr-gcc 5.4 does not know.
 */
const folder = join(import.meta.dirname, "programs");
const includePaths = ["include", "include/deep"];
const programs = readdirSync(folder).filter((name) => name.endsWith(".c"));
const options = includePaths.flatMap((path) => ["-I", path]);
const host = hostOfFolder(folder);

function isForGccOnly(program: string): boolean {
  return readFileSync(join(folder, program), "utf8").startsWith("// gcc only");
}

test("there are programs enough", () => {
  expect(programs.length).toBeGreaterThanOrEqual(60);
});

describe.each([gcc, avrGcc])("as $name -E reads them", (compiler) => {
  const chosen = programs.filter((program) => compiler.name === "gcc" || !isForGccOnly(program));
  const { texts, broken } = preprocessWith(compiler, folder, chosen, options);

  test.each(chosen)("%s", (program) => {
    expect(broken).not.toContain(program);
    const { tokens, problems, missing } = readProgram(host, program, includePaths);
    expect(tokens.map((token) => token.text)).toEqual(outputTokens(texts.get(program) ?? ""));
    expect({ problems, missing }).toEqual({ problems: [], missing: [] });
  });
});
