// The mouse's y grows upwards; that of the three-byte serial reports grows downwards, that of the five-byte one upwards.
//
// The note says which way the function's parameter grows (`y=-dy`: the other way than the report's). The rule runs the
// function and reports where every y comes out as its opposite. A run of the whole firmware shows the same of all that it sends.

import type { Rule } from "../rule.ts";
import { draftsOfRuns } from "../runs/drafts-of-runs.ts";
import { draftsOf, sourceOfLayouts } from "./drafts.ts";
import { rightEncoder } from "./right-encoder.ts";

export const yDirection: Rule = {
  id: "report/y-direction",
  title: "Up and down exchanged",
  severity: "error",
  why:
    "The mouse counts upwards and the serial report downwards: without the change of sign the cursor " +
    "goes up when the mouse is pulled down.",
  wrong: {
    "main.c": `// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include <stdbool.h>
// @wire encodes two-button from x=dx y=-dy left=left right=right into out
void build_report(uint8_t out[3], int8_t dx, int8_t dy, bool left, bool right) {
  uint8_t x = dx;
  uint8_t y = dy;
  out[0] = 0x40 | (left << 5) | (right << 4) | ((y >> 4) & 0x0C) | (x >> 6);
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
`,
  },
  right: rightEncoder,
  source: sourceOfLayouts,
  judgeParts: (reports) => draftsOf("y-direction", reports),
  judge: (trials) => draftsOfRuns("report/y-direction", trials),
};
