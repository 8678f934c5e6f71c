import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { formatted } from "../../../src-core/interpreter/library/format.ts";
import { passedArguments } from "../../../src-core/interpreter/library/format-arguments.ts";
import { ascii } from "../../../src-core/interpreter/library/target-text.ts";
import { ilp32Model } from "../../../src-core/reader/types/data-models.ts";
import { sketchLibrary } from "../../src-core/interpreter/library/library-target.ts";

/* Conversions of floating numbers on targets with a `double` of 64 bits, beside the host's printf. */

const formats = [
  ...["%f", "%.0f", "%.2f", "%e", "%.0e", "%.3E", "%g", "%.3g", "%#g", "%#.0f", "%#.0e"],
  ...["%+08.2f", "%-9.1f|", "% g", "%G", "%.0g", "%012g"],
];
const values = [
  0, 1.5, 2.5, -0.5, 100000, 1e6, 0.0001, 0.00001, 123456.789, 1e22, 0.15, -2.675, 1e300, 0.125,
];

function hostLines(): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), "floating-formats-"));
  try {
    const calls = formats.flatMap((format) =>
      values.map((value) => `printf(${JSON.stringify(`${format}\n`)}, (double)${value.toExponential()});`),
    );
    writeFileSync(join(folder, "main.c"), `#include <stdio.h>\nint main(void) {\n${calls.join("\n")}\n}\n`);
    execFileSync("gcc", ["-w", join(folder, "main.c"), "-o", join(folder, "main")]);
    return execFileSync(join(folder, "main"), { encoding: "utf8" }).trimEnd().split("\n");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test("e, f and g with flags, widths and precisions", async () => {
  const { memory } = await sketchLibrary();
  const ours = formats.flatMap((format) =>
    values.map((value) => {
      const job = { memory, model: ilp32Model, arguments: passedArguments([value], 0) };
      return String.fromCharCode(...formatted(ascii(format), job));
    }),
  );
  expect(ours).toEqual(hostLines());
});
