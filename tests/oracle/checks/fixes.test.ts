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
const quick = rules.filter((rule) => rule.judge === undefined || rule.needsWholeRun === false);

describe.each(suites.map(({ rule, snippets }) => [rule.id, snippets.wrong] as const))("%s", (id, wrong) => {
  test.each(Object.entries(wrong))("%s", (_, example) => {
    const before = findingsIn(example, quick);
    const complaintsBefore = complaintsOf(example);
    for (const finding of before.filter(({ rule }) => rule === id)) {
      for (const fix of finding.fixes) {
        const mended = withEdits(example, fix.edits);
        const after = findingsIn(mended, quick).map(({ rule, message }) => `${rule}: ${message}`);
        expect(after, fix.title).not.toContain(`${id}: ${finding.message}`);
        const known = new Set(before.map(({ rule, message }) => `${rule}: ${message}`));
        expect(
          after.filter((each) => !known.has(each)),
          fix.title,
        ).toEqual([]);
        const complaints = complaintsOf(mended);
        expect(
          complaints.filter((each) => !complaintsBefore.includes(each)),
          fix.title,
        ).toEqual([]);
        counts.fixes += 1;
        if (complaintsBefore.length === 0) counts.clean += 1;
      }
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

/** The compiler's errors, without their lines; the sources of an example by themselves, a sketch's files together. */
function complaintsOf(example: Example): readonly string[] {
  rmSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(example)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  const names = Object.keys(example);
  const sketch = names.filter((name) => name.endsWith(".ino"));
  if (sketch.length > 0) {
    const parts = sketch.map((name) => example[name] ?? "");
    writeFileSync(join(folder, "sketch.cpp"), `#include <Arduino.h>\n${parts.join("\n")}\n`);
  }
  const sources = [
    ...names.filter((name) => /\.(c|cc|cpp)$/.test(name)),
    ...(sketch.length > 0 ? ["sketch.cpp"] : []),
  ];
  return sources.flatMap((name) => errorsIn(name, chipOf(example)));
}

function chipOf(example: Example): string {
  const all = Object.values(example).join("\n");
  return /@wire board (\w+)/.exec(all)?.[1] ?? /"chip":\s*"(\w+)"/.exec(all)?.[1] ?? "atmega328p";
}

function errorsIn(name: string, chip: string): readonly string[] {
  const isC = name.endsWith(".c");
  const variant = chip.toLowerCase() === "atmega32u4" ? "leonardo" : "standard";
  const options = [
    `-mmcu=${chip.toLowerCase()}`,
    "-fsyntax-only",
    "-w",
    "-DARDUINO=10819",
    "-DARDUINO_ARCH_AVR",
    ...(name === "sketch.cpp" ? ["-DF_CPU=16000000UL"] : []),
    `-I${core}/cores/arduino`,
    `-I${core}/variants/${variant}`,
    isC ? "-std=gnu11" : "-std=gnu++17",
  ];
  const { error, stderr } = spawnSync(isC ? "avr-gcc" : "avr-g++", [...options, name], {
    cwd: folder,
    encoding: "utf8",
  });
  if (error !== undefined) throw error;
  return [...stderr.matchAll(/ error: (.*)$/gm)].map(([, message = ""]) => message);
}
