import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { avrGcc, preprocessWith } from "./compilers.ts";
import { outputTokens } from "./output-tokens.ts";
import { readProgram } from "./read-program.ts";

/*
 * `util/setbaud.h` of avr-libc 2.0, read by avr-gcc, says which divisor and which speed a clock and a rate need;
 * our own header has to say the same. Divisors are compared by value, so that both may be spelled as they like.
 */
const CLOCKS = [
  1_000_000, 1_843_200, 2_000_000, 3_686_400, 4_000_000, 7_372_800, 8_000_000, 11_059_200, 12_000_000,
  14_745_600, 16_000_000, 18_432_000, 20_000_000,
];
const BAUDS = [1200, 2400, 4800, 9600, 14_400, 19_200, 28_800, 38_400, 57_600, 76_800, 115_200];
const TOLERANCES = [undefined, 0, 1, 3];

interface Case {
  readonly clock: number;
  readonly baud: number;
  readonly tolerance: number | undefined;
}

const cases: readonly Case[] = CLOCKS.flatMap((clock) =>
  BAUDS.flatMap((baud) => TOLERANCES.map((tolerance) => ({ clock, baud, tolerance }))),
);

/** `B1` or `B0` for each bit of a value, highest first: a number that both preprocessors can print. */
function bitsOf(value: string, count: number): readonly string[] {
  return Array.from({ length: count }, (_, index) => count - 1 - index).flatMap((bit) => [
    `#if (${value} >> ${bit}) & 1`,
    "B1",
    "#else",
    "B0",
    "#endif",
  ]);
}

const program = cases
  .flatMap(({ clock, baud, tolerance }) => [
    `#define F_CPU ${clock}UL`,
    `#define BAUD ${baud}`,
    ...(tolerance === undefined ? [] : [`#define BAUD_TOL ${tolerance}`]),
    "#include <util/setbaud.h>",
    "CASE USE_2X",
    ...bitsOf("UBRR_VALUE", 13),
    "LOW",
    ...bitsOf("UBRRL_VALUE", 8),
    "HIGH",
    ...bitsOf("UBRRH_VALUE", 5),
    "#undef F_CPU",
    "#undef BAUD",
    "#undef BAUD_TOL",
  ])
  .join("\n");

function splitCases(tokens: readonly string[]): readonly string[] {
  return tokens.join(" ").split("CASE ").slice(1);
}

describe("util/setbaud.h", () => {
  const folder = mkdtempSync(join(tmpdir(), "setbaud-"));
  writeFileSync(join(folder, "all.c"), program);
  const { texts, broken } = preprocessWith(avrGcc, folder, ["all.c"]);
  rmSync(folder, { recursive: true });
  const wanted = splitCases(outputTokens(texts.get("all.c") ?? ""));
  const { tokens, problems } = readProgram(hostOfFiles({ "all.c": program }), "all.c", []);
  const found = splitCases(tokens.map((token) => token.text));

  test("both read it without an error", () => {
    expect([...broken]).toEqual([]);
    expect(problems).toEqual([]);
    expect(wanted.length).toBe(cases.length);
  });

  test("USE_2X, UBRR_VALUE, UBRRL_VALUE and UBRRH_VALUE for every clock, rate and tolerance", () => {
    expect(cases.map((each, index) => ({ ...each, result: found[index] }))).toEqual(
      cases.map((each, index) => ({ ...each, result: wanted[index] })),
    );
  });

  test("some cases need double speed and some do not", () => {
    expect(wanted.filter((each) => each.startsWith("1")).length).toBeGreaterThan(20);
    expect(wanted.filter((each) => each.startsWith("0")).length).toBeGreaterThan(20);
  });
});
