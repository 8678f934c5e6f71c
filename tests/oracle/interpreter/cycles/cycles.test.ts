import { describe, expect, test } from "vitest";
import { grammar } from "../../../src-core/reader/typed/type-source.ts";
import { sourceReader } from "../read-source.ts";
import { compiledCycles } from "./compiled-cycles.ts";
import { estimatedCycles } from "./estimated-cycles.ts";
import { type MeasuredFile, measuredFiles } from "./measured-functions.ts";

/*
 * How far off the interpreter's cycle counts are: functions as firmware has them, compiled by avr-gcc -Os and run on a
 * simulated chip, beside the same functions interpreted with a clock. The files named `held-out` are those that the
 * cost model was not made with.
 */

interface Row {
  readonly name: string;
  readonly compiled: number;
  readonly estimated: number;
}

const read = sourceReader(await grammar());

/** The cycles of all calls of each function together. */
async function rowsOf(file: MeasuredFile): Promise<readonly Row[]> {
  const compiled = await compiledCycles(file);
  const estimated = estimatedCycles(file, read(file.program));
  // Both look at the inputs as often: they went the same way.
  expect(estimated.map(({ looks }) => looks)).toEqual(compiled.map(({ looks }) => looks));
  let at = 0;
  return file.functions.map(({ name, calls }) => {
    const sum = (all: readonly { readonly cycles: number }[]): number =>
      all.slice(at, at + calls.length).reduce((total, { cycles }) => total + cycles, 0);
    const row = { name, compiled: sum(compiled), estimated: sum(estimated) };
    at += calls.length;
    return row;
  });
}

const ratio = ({ compiled, estimated }: Row): number => estimated / compiled;
const factor = (row: Row): number => Math.max(ratio(row), 1 / ratio(row));

/** The part of the functions that are off by no more than the result. */
function quantile(rows: readonly Row[], part: number): number {
  const errors = rows.map((row) => Math.abs(ratio(row) - 1)).sort((a, b) => a - b);
  return errors[Math.min(errors.length - 1, Math.floor(errors.length * part))] ?? 0;
}

function table(title: string, rows: readonly Row[]): string {
  const lines = rows.map(
    (row) =>
      `${row.name.padEnd(24)}${String(row.compiled).padStart(9)}${String(row.estimated).padStart(11)}${ratio(row).toFixed(2).padStart(8)}`,
  );
  const percent = (part: number): string => `${(quantile(rows, part) * 100).toFixed(0)} %`;
  const summed = `median error ${percent(0.5)}, nine of ten within ${percent(0.9)}, worst factor ${Math.max(...rows.map(factor)).toFixed(2)}`;
  return `${title.padEnd(24)} compiled  estimated   ratio\n${lines.join("\n")}\n${summed}\n`;
}

describe("estimated cycles beside those of compiled code", async () => {
  const known: Row[] = [];
  const heldOut: Row[] = [];
  for (const file of measuredFiles())
    (file.name.startsWith("held-out") ? heldOut : known).push(...(await rowsOf(file)));
  process.stdout.write(table("functions", known) + table("held out", heldOut));

  test("of functions that the model was made with", () => {
    expect(known.length).toBeGreaterThanOrEqual(40);
    expect(quantile(known, 0.5)).toBeLessThanOrEqual(0.12);
    expect(quantile(known, 0.9)).toBeLessThanOrEqual(0.3);
    expect(Math.max(...known.map(factor))).toBeLessThanOrEqual(2);
  });

  test("of functions that it was not made with", () => {
    expect(heldOut).toHaveLength(10);
    expect(quantile(heldOut, 0.5)).toBeLessThanOrEqual(0.25);
    expect(Math.max(...heldOut.map(factor))).toBeLessThanOrEqual(2.5);
  });
});
