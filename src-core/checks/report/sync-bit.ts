// The constant bits of a layout are what a receiver finds the start of a report by: bit 6 of a serial report's bytes,
// bit 3 of the mouse's own first byte. A sign extension or a mask that is too wide reaches them with some movements
// only, so that a quick try shows nothing.
//
// The rule runs the encoder over its inputs and reports each byte in which a constant bit came out wrong while the
// movement was one that the report can carry.

import type { Rule } from "../rule.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const syncBit: Rule = {
  id: "report/sync-bit",
  title: "A constant bit of a report that is not constant",
  severity: "error",
  why:
    "The PC tells the first byte of a report by a bit that the others must not have. Where a movement's " +
    "bit reaches it, the PC starts in the middle of a report and the cursor jumps.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x7F;
  out[2] = y & 0x3F;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("sync-bit", reports),
};
