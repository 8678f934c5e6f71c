// A movement is a number in two's complement whose sign stands in another byte than the rest of it. A mask that is too
// narrow, a division instead of a shift (which rounds towards zero), an absolute value, or a decoder that forgets the
// ninth bit loses it: positive movements come out right and negative ones do not.

import type { Rule } from "../rule.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const signLost: Rule = {
  id: "report/sign-lost",
  title: "Movement to the left or down that loses its sign",
  severity: "error",
  why:
    "To the right and down the cursor moves as it should; to the left or up it jumps far to the other " +
    "side, as a small negative number becomes a large positive one.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | ((dx & 0x7F) >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("sign-lost", reports),
};
