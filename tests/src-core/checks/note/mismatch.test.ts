import { mismatch } from "../../../../src-core/checks/note/mismatch.ts";
import { ruleTests } from "../harness.ts";

// What a note can contradict is our own definition: the code, or another note.

ruleTests(mismatch, {
  wrong: {
    "a clock that is not F_CPU": {
      "main.c": `
// @wire board atmega328p clock=16MHz
//                              ^^^^^ note/mismatch: 8MHz
#define F_CPU 8000000UL
int main(void) { return 0; }
`,
    },
    "two boards": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire board attiny85
//             ^^^^^^^^ note/mismatch: atmega328p
int main(void) { return 0; }
`,
    },
    "a parameter that the function has not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-deltaY left=b.0 right=b.1 into out
//                                       ^^^^^^ note/mismatch: deltay
void build(int8_t dx, int8_t deltay, uint8_t b, uint8_t out[3]) {
  out[0] = 0x40 | (b & 1) << 5;
  out[1] = dx & 0x3F;
  out[2] = -deltay & 0x3F;
}
int main(void) { return 0; }
`,
    },
    "a macro that is no constant": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/mismatch: parameters
#define HOLD(us) ((us) + 1)
int main(void) { return 0; }
`,
    },
  },
  right: {
    "a note that wins over edgewise.json": {
      "main.c": `
// @wire board atmega328p clock=16MHz
int main(void) { return 0; }
`,
      "edgewise.json": `{ "board": { "chip": "attiny85", "clock": "8MHz" } }`,
    },
  },
});
