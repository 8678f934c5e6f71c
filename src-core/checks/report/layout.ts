// A report is a table of bits, and a movement's high and low bits often go into different bytes: exchanged, shifted
// by one or put into the other axis's place they still look like a report.
//
// The rule runs the function that an `encodes` or `decodes` note names, with the chip's integer sizes, over every
// movement that the mouse can report, every set of the buttons and a mixture of both, and finds out what drives each
// bit. What another rule of this group says better is left to it. A run of the whole firmware shows where the movement to the
// side goes up and down, and the other way round.

import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const layout: Rule = {
  id: "report/layout",
  title: "Movement in the wrong bits of a report",
  severity: "error",
  why:
    "The PC takes the bits where its driver expects them: with two of them exchanged the cursor jumps " +
    "on some movements and is right on others, which looks like a bad contact.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = -dy;
  out[0] = 0x40 | (left << 5) | (right << 4) | ((x >> 4) & 0x0C) | (y >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("layout", reports),
  judge: (trials) => draftsOfRuns("report/layout", trials),
};
