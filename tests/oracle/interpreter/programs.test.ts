import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { grammar } from "../../src-core/reader/typed/type-source.ts";
import { compareRuns } from "./compare-runs.ts";
import { removeCompiledCore } from "./compile.ts";
import { sourceReader } from "./read-source.ts";
import type { SourceProgram } from "./source-program.ts";

/*
 * Small programs, one for each feature of the languages: what avr-gcc's image sends over the serial port, run on a
 * simulated chip, is what the interpreter sends.
 */
const here = "tests/oracle/interpreter";
const headers = { "port.h": readFileSync(join(here, "port.h"), "utf8") };
const read = sourceReader(await grammar());

afterAll(removeCompiledCore);

const languages = { ".c": "c", ".cpp": "c++", ".ino": "sketch" } as const;

function languageOf(name: string): SourceProgram["language"] {
  const found = Object.entries(languages).find(([extension]) => name.endsWith(extension));
  if (found === undefined) throw new Error(`${name} is in no language that is known here`);
  return found[1];
}

function programNamed(folder: string, name: string): SourceProgram {
  const text = readFileSync(join(here, folder, name), "utf8");
  return { language: languageOf(name), text, headers };
}

const namesIn = (folder: string): readonly string[] => readdirSync(join(here, folder)).sort();

describe("sends what the compiled image sends", () => {
  const programs = ["programs", "sketches"].flatMap((folder) =>
    namesIn(folder).map((name) => [folder, name] as const),
  );
  test.each(programs)("%s/%s", async (folder, name) => {
    const comparison = await compareRuns(programNamed(folder, name), read);
    if (comparison.kind === "mismatch") expect(comparison.got).toBe(comparison.expected);
    expect(comparison).toMatchObject({ kind: "agree", missteps: [] });
    if (comparison.kind === "agree") expect(comparison.sent.length).toBeGreaterThan(10);
  });
});

describe("what cannot be run is refused, never run wrongly", () => {
  test.each(namesIn("refused-programs"))("%s", async (name) => {
    const comparison = await compareRuns(programNamed("refused-programs", name), read);
    expect(comparison.kind).toBe("refused");
    if (comparison.kind === "refused")
      expect(comparison.message).toMatch(/^cannot run: .+ at (main|sketch)\S*:\d+/);
  });
});
