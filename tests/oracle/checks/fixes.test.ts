import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { rules } from "../../../src-core/checks/registry.ts";
import type { Example } from "../../../src-core/checks/rule.ts";
import { suitesOfAll } from "../../src-core/checks/snippets-of-all.ts";

vi.mock("../../src-core/checks/harness.ts", async (load) =>
  (await import("../../src-core/checks/snippets-of-all.ts")).collecting(load),
);

/*
 * Every fix of every wrong snippet: applied, its finding is gone, no other of any rule has come, and the compiler has no
 * complaint that it did not have before. Sketches are compiled with the core's own headers (arduino-core-avr).
 */
const core = "/usr/share/arduino/hardware/arduino/avr";

/** A sketch's files, put together as the sketch tools do. */
const sketchName = "sketch.cpp";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "edgewise-fixes-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Fixes that were compiled, and those whose snippet compiled without an error before. */
const counts = { fixes: 0, clean: 0 };

const suites = await suitesOfAll();
const { findingsIn, withEdits } = await import("../../src-core/checks/harness.ts");

/** Faults that only a run of the whole firmware shows have no fixes, and runs take long. */
const quick = rules.filter((rule) => rule.judge === undefined || rule.judgeParts !== undefined);

describe.each(suites.map(({ rule, snippets }) => [rule.id, snippets.wrong] as const))("%s", (id, wrong) => {
  test.each(Object.entries(wrong))("%s", (_, example) => {
    const before = findingsIn(example, quick);
    const known = new Set(before.map(({ rule, message }) => `${rule}: ${message}`));
    const offered = before
      .filter(({ rule }) => rule === id)
      .flatMap(({ message, fixes }) =>
        fixes.map(({ title, edits }) => ({ title, message, mended: withEdits(example, edits) })),
      );
    if (offered.length === 0) return;
    const [complaintsBefore = [], ...complaints] = complaintsOf([
      example,
      ...offered.map(({ mended }) => mended),
    ]);
    for (const [index, { title, message, mended }] of offered.entries()) {
      const after = findingsIn(mended, quick).map(({ rule, message }) => `${rule}: ${message}`);
      expect(after, title).not.toContain(`${id}: ${message}`);
      expect(
        after.filter((each) => !known.has(each)),
        title,
      ).toEqual([]);
      expect(
        complaints[index]?.filter((each) => !complaintsBefore.includes(each)),
        title,
      ).toEqual([]);
      counts.fixes += 1;
      if (complaintsBefore.length === 0) counts.clean += 1;
    }
  });
});

// In a suite of its own, as tests outside of any run before all suites.
describe("the compiler", () => {
  test("had no complaint of most snippets, so that it would have had one of a wrong fix", () => {
    expect(counts.fixes).toBeGreaterThan(0);
    expect(counts.clean / counts.fixes).toBeGreaterThan(0.5);
  });
});

/** A source to compile, in the folder of its example. */
interface Source {
  readonly path: string;
  readonly isC: boolean;
}

/**
 * The compiler's errors in each of the examples, which are for the same chip, without their lines; the sources of an example by
 * themselves, a sketch's files together. The compiler is started once for each language.
 */
function complaintsOf(examples: readonly Example[]): readonly (readonly string[])[] {
  rmSync(folder, { recursive: true });
  const sources = examples.flatMap((example, index) => written(example, `${index}`));
  const chip = chipOf(examples[0] ?? {});
  const complaints = examples.map((): string[] => []);
  for (const isC of [true, false]) {
    const paths = sources.filter((source) => source.isC === isC).map(({ path }) => path);
    if (paths.length === 0) continue;
    let current: string[] | undefined;
    for (const line of linesFrom(paths, isC, chip)) {
      const index = /^(?:In file included from )?(\d+)\//.exec(line)?.[1];
      if (index !== undefined) current = complaints[Number(index)];
      const message = / error: (.*)$/.exec(line)?.[1];
      if (message !== undefined) current?.push(message);
    }
  }
  return complaints;
}

/** Writes an example into its folder, and gives what is to be compiled there. */
function written(example: Example, own: string): readonly Source[] {
  const names = Object.keys(example);
  const sketch = names.filter((name) => name.endsWith(".ino"));
  const text = `#include <Arduino.h>\n${sketch.map((name) => example[name] ?? "").join("\n")}\n`;
  const files = sketch.length > 0 ? { ...example, [sketchName]: text } : example;
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, own, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
  }
  return Object.keys(files)
    .filter((name) => /\.(c|cc|cpp)$/.test(name))
    .map((name) => ({ path: join(own, name), isC: name.endsWith(".c") }));
}

function chipOf(example: Example): string {
  const all = Object.values(example).join("\n");
  return /@wire board (\w+)/.exec(all)?.[1] ?? /"chip":\s*"(\w+)"/.exec(all)?.[1] ?? "atmega328p";
}

/** What the compiler says of these sources. A sketch's clock is that of its board; whoever writes it in a source has it there. */
function linesFrom(paths: readonly string[], isC: boolean, chip: string): readonly string[] {
  const variant = chip.toLowerCase() === "atmega32u4" ? "leonardo" : "standard";
  const options = [
    `-mmcu=${chip.toLowerCase()}`,
    "-fsyntax-only",
    "-w",
    "-DARDUINO=10819",
    "-DARDUINO_ARCH_AVR",
    ...(paths.some((path) => path.endsWith(sketchName)) ? ["-DF_CPU=16000000UL"] : []),
    `-I${core}/cores/arduino`,
    `-I${core}/variants/${variant}`,
    isC ? "-std=gnu11" : "-std=gnu++17",
  ];
  const { error, stderr } = spawnSync(isC ? "avr-gcc" : "avr-g++", [...options, ...paths], {
    cwd: folder,
    encoding: "utf8",
  });
  if (error !== undefined) throw error;
  return stderr.split("\n");
}
