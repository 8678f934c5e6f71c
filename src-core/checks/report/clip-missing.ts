// A report carries a movement of so many bits, and what the function takes can be larger: movements of several reports of
// the mouse are added up while the line is busy. Larger ones have to be cut off at the limit (and the rest kept for
// the next report), not folded over.
//
// The rule runs the function over all that its parameters can be, or over no more than its callers give it, where every one
// of them is seen to keep to less. Clipping to less than the layout carries is right as well. A function whose callers clip
// says so best by a parameter of the narrower type.

import type { Rule } from "../rule.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";

export const clipMissing: Rule = {
  id: "report/clip-missing",
  title: "Movement beyond what a report carries is not clipped",
  severity: "warning",
  why:
    "A quick stroke is more than one report can say. Cut off by a cast it turns round: the cursor jumps " +
    "back in the middle of the fastest movements.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
static int8_t clip(int16_t counts) {
  return counts > 127 ? 127 : counts < -127 ? -127 : counts;
}
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int16_t dx, int16_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = clip(-dy);
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  right: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
static int8_t clip(int16_t counts) {
  return counts > 127 ? 127 : counts < -127 ? -127 : counts;
}
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int16_t dx, int16_t dy, bool left, bool right) {
  uint8_t x = clip(dx);
  uint8_t y = clip(-dy);
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("clip-missing", reports),
};
