import { syntax } from "../../../../src-core/checks/note/syntax.ts";
import { ruleTests } from "../harness.ts";

// The grammar of wire notes is our own; these cases follow its description in the README and DEVELOPERS.md.

ruleTests(syntax, {
  wrong: {
    "a clock without its unit": {
      "main.c": `
// @wire board atmega328p clock=16
//                              ^^ note/syntax: 16MHz
int main(void) { return 0; }
`,
    },
    "an allow without a reason": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire allow note/unattached
//             ^^^^^^^^^^^^^^^ note/syntax: because
int main(void) { return 0; }
`,
    },
    "spaces around the equals sign": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock = 2
//           ^^^^^^^^^ note/syntax: key=value
void setup() {
}
void loop() {
}
`,
    },
    "no directive": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire
// ^^^^^ note/syntax: needs a directive
int main(void) { return 0; }
`,
    },
    "a word that is missing in a block comment": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
/* @wire encodes two-button x=dx y=-dy left=b.0 right=b.1 into out */
//                          ^^^^ note/syntax: is missing
void build(int8_t dx, int8_t dy, uint8_t b, uint8_t *out) {}
int main(void) { return 0; }
`,
    },
    "a UART that is no number": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=zero report=two-button
//                   ^^^^ note/syntax: number of a UART
int main(void) { return 0; }
`,
    },
    "a frame that is none": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 line=7X1
//                          ^^^ note/syntax: 7N1
void setup() {}
void loop() {}
`,
    },
  },
  right: {
    "comments that only speak of notes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// The \`@wire\` notes above say what the code does not.
int main(void) { return 0; }
`,
    },
    "every directive": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=4 report=two-button shifter=inverting baud=1200 line=7N1
#include <stdint.h>
// @wire means ps2.request-hold
#define HOLD_US 100
// @wire encodes two-button from x=dx y=-dy left=b.0 right=b.1 into out
// @wire try right=12 down=5 press=left
void build(int8_t dx, int8_t dy, uint8_t b, uint8_t out[3]) 
  out[0] = 0x40 | (b & 1) << 5;
int main(void) return 0; 
`,
    },
    "a reason in quotes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire allow serial/baud-error because "the PC is set to 4800 baud"
int main(void) return 0; 
`,
    },
    "notes in a block comment and behind code": {
      "main.c": `
/* The Ferry.
 * @wire board atmega328p clock=7.3728MHz
 */
#define HOLD_US 100 // @wire means ps2.request-hold
int main(void) return 0; 
`,
    },
    "no note at all": {
      "main.c": `
#define WIRE "wire"
/* wire up RTS */
int main(void) return 0; 
`,
    },
  },
});
