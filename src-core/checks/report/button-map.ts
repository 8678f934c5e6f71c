// The mouse and the serial report have their buttons in different orders, and the five-byte report counts a button that is
// down as 0.
//
// The rule runs the function with every set of the buttons that its note names, and twice in a row where it builds the
// report in an array that nobody else writes to: a button that is only ever added to the old byte stays down.

import type { Rule } from "../rule.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const buttonMap: Rule = {
  id: "report/button-map",
  title: "A button in the wrong bit",
  severity: "error",
  why: "The PC sees another button than the one that was pressed, one that is held down for good, or none.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  out[0] = 0x40 | (left << 4) | (right << 5) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("button-map", reports),
};
