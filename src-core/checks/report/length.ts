// Every layout has its number of bytes. Only the fourth byte of `middle-button` may be left out, while the middle button is
// up.
//
// The rule counts the bytes that the function writes to its array or sends with each input; where it returns a number
// that can only be their count, that one counts.

import type { Rule } from "../rule.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const length: Rule = {
  id: "report/length",
  title: "A report with too many bytes or too few",
  severity: "error",
  why:
    "The PC counts the bytes of a report: one more or one fewer, and every report that follows is read " +
    "shifted.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = 0;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("length", reports),
};
