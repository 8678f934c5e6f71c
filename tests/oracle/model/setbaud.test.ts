import { describe, expect, test } from "vitest";
import { setbaudSetting } from "../../../src-core/model/divisors/avr-library-settings.ts";
import { avrC, sectionsOf } from "../constants/avr-compiler.ts";

/** Clocks of boards and crystals that AVR parts run at, in Hz. */
const clocks = [
  1_000_000, 1_843_200, 2_000_000, 3_686_400, 4_000_000, 4_915_200, 6_000_000, 7_372_800, 8_000_000,
  9_216_000, 9_600_000, 10_000_000, 11_059_200, 12_000_000, 12_288_000, 14_745_600, 16_000_000, 16_500_000,
  18_432_000, 20_000_000,
];

const bauds = [300, 600, 1200, 2400, 4800, 9600, 14_400, 19_200, 28_800, 38_400, 57_600, 115_200];

/** What util/setbaud.h makes of each pair, compiled by avr-gcc: UBRR_VALUE and USE_2X. */
function compiled(
  pairs: readonly (readonly [clock: number, baud: number])[],
): readonly (readonly [number, number])[] {
  const rows = pairs.map(
    ([clock, baud]) => `
#undef F_CPU
#undef BAUD
#define F_CPU ${clock}UL
#define BAUD ${baud}UL
#include <util/setbaud.h>
UBRR_VALUE, USE_2X,`,
  );
  const text = `const unsigned long values[] __attribute__((section(".values"), used)) = {${rows.join("")}\n};`;
  const [values] = sectionsOf(avrC, text, [".values"]);
  if (values === undefined) throw new Error("no section");
  return pairs.map((_, index) => [values.readUInt32LE(index * 8), values.readUInt32LE(index * 8 + 4)]);
}

describe("UBRR and U2X as util/setbaud.h of avr-libc computes them", () => {
  const pairs = clocks.flatMap((clock) => bauds.map((baud) => [clock, baud] as const));
  const expected = compiled(pairs);

  test(`${pairs.length} pairs of clock and baud`, () => {
    for (const [index, [clock, baud]] of pairs.entries()) {
      const { sampling, value } = setbaudSetting(clock, baud);
      expect([clock, baud, value, sampling]).toEqual([
        clock,
        baud,
        expected[index]?.[0],
        `U2X=${expected[index]?.[1]}`,
      ]);
    }
  });
});
