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
  uint8_t down = -deltay;
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (down & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x3F;
  out[2] = down & 0x3F;
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
    "a UART and a pin that sends": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 tx=PD1 report=two-button
//                        ^^^ note/mismatch: exclude each other
int main(void) { return 0; }
`,
    },
    "two pins for one line": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2
// @wire ps2 clock=3 data=4
//                 ^ note/mismatch: 2
void setup() {}
void loop() {}
`,
    },
    "a bit that a byte has not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=b.8 right=b.1 into out
//                                               ^^^ note/mismatch: bits 0 to 7
void build(int8_t dx, int8_t dy, uint8_t b, uint8_t out[3]) { out[0] = dx | dy | b; }
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
    "the same clock by both": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#define F_CPU (16 * 1000000UL)
int main(void) { return 0; }
`,
    },
    "the same said twice": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3
// @wire ps2 clock=2 pullups=internal
void setup() {}
void loop() {}
`,
    },
    "parameters, members and globals": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct motion { int16_t dx, dy; };
static uint8_t buttons;
static uint8_t out[3];
// @wire encodes two-button from x=m.dx y=-m.dy left=buttons.0 right=buttons.1 into out
void build(struct motion m) { out[0] = m.dx | m.dy | buttons; }
int main(void) { return 0; }
`,
    },
    "a constant by a function of constants": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#define US(ms) ((ms) * 1000)
// @wire means ps2.request-hold
#define HOLD_US US(1)
int main(void) { return 0; }
`,
    },
  },
});
