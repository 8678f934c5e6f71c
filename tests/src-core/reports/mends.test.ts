import { describe, expect, it } from "vitest";
import { buttonMap } from "../../../src-core/checks/report/button-map.ts";
import { layout } from "../../../src-core/checks/report/layout.ts";
import { findingsIn, withEdits } from "../checks/harness.ts";

// mouse(4), Linux man-pages: bits 0 and 1 of the first byte are the two highest bits of X, bits 2 and 3 those of Y. To shift a
// negative number to the right copies its sign (gcc manual, "Integers implementation"), so that ones reach all bits above.

const sketch = (encoder: string): string => `// @wire board atmega328p clock=16MHz
${encoder}void setup() { Serial.begin(1200, SERIAL_7N1); }
void loop() { report(1, 2, false, false); }
`;

const sent = (first: string) => ({
  "ferry.ino": sketch(`// @wire encodes two-button from x=dx y=dy left=left right=right into Serial.write
void report(int8_t dx, int8_t dy, bool left, bool right) {
${first}  Serial.write(dx & 0x3F);
  Serial.write(dy & 0x3F);
}
`),
});

describe("a movement that is shifted with its sign is masked by a fix", () => {
  it.each([
    [
      "X in what is sent",
      "  Serial.write(0x40 | left << 5 | right << 4 | (dy >> 4 & 0x0C) | dx >> 6);\n",
      "(dy >> 4 & 0x0C) | ((dx >> 6) & 0x03)",
    ],
    [
      "Y in what is sent",
      "  Serial.write(0x40 | left << 5 | right << 4 | (dy >> 4) | (dx >> 6 & 3));\n",
      "| ((dy >> 4) & 0x0C) | (dx >> 6 & 3)",
    ],
    [
      "X in a variable further up",
      "  byte first = 0x40 | left << 5 | right << 4;\n  first |= (dy >> 6 & 3) << 2 | dx >> 6;\n  Serial.write(first);\n",
      "(dy >> 6 & 3) << 2 | ((dx >> 6) & 0x03)",
    ],
    [
      "Y in front of its place",
      "  byte first = 0x40 | left << 5 | right << 4;\n  first |= (dy >> 6) << 2 | (dx >> 6 & 3);\n  Serial.write(first);\n",
      "((dy >> 6) & 0x03) << 2",
    ],
  ])("%s", (_, first, expected) => {
    const firmware = sent(first);
    const [finding, ...others] = findingsIn(firmware, [layout]);
    expect(others).toEqual([]);
    const [fix] = finding?.fixes ?? [];
    const text = withEdits(firmware, fix?.edits ?? [])["ferry.ino"];
    expect(text).toContain(expected);
  });
});

// mouse(4), Linux man-pages: bit 5 of the first byte is the left button, bit 4 the right one.
it("a button that is shifted into the place of another is told where it is shifted, and shifted otherwise by a fix", () => {
  const firmware = {
    "ferry.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
static uint8_t row[3];
// @wire encodes two-button from x=x y=y left=held.0 right=held.1 into row
static void pack(int8_t x, int8_t y, uint8_t held)
{
    row[0] = 0x40 | ((held & 1) << 5) | ((held & 2) << 4) | ((y >> 4) & 0x0C) | ((x >> 6) & 0x03);
    row[1] = x & 0x3F;
    row[2] = y & 0x3F;
}
int main(void)
{
    pack(1, 2, 0);
}
`,
  };
  const [finding, ...others] = findingsIn(firmware, [buttonMap]);
  expect(others).toEqual([]);
  const { start, end } = finding?.span ?? { start: 0, end: 0 };
  expect(firmware["ferry.c"].slice(start, end)).toBe("(held & 2) << 4");
  const [fix] = finding?.fixes ?? [];
  expect(withEdits(firmware, fix?.edits ?? [])["ferry.c"]).toContain("((held & 2) << 3)");
});
