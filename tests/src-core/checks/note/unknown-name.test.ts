import { unknownName } from "../../../../src-core/checks/note/unknown-name.ts";
import { ruleTests } from "../harness.ts";

// Pins of the ATmega328P: ports B (PB0 to PB7), C (PC0 to PC6) and D (PD0 to PD7); one USART, USART0: ATmega48A/PA/88A/
// PA/168A/PA/328/P datasheet (8271D), Pin Configurations and USART0.

ruleTests(unknownName, {
  wrong: {
    "a misspelt chip": {
      "main.c": `
// @wire board atmega382p clock=16MHz
//             ^^^^^^^^^^ note/unknown-name: atmega328p
int main(void) { return 0; }
`,
    },
    "a pin that the chip has not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD8
//                          ^^^ note/unknown-name: PD8
int main(void) { return 0; }
`,
    },
    "a UART that the chip has not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=1
//                   ^ note/unknown-name: 0
int main(void) { return 0; }
`,
    },
    "a misspelt quantity": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hodl
//             ^^^^^^^^^^^^^^^^ note/unknown-name: ps2.request-hold
#define HOLD_US 100
int main(void) { return 0; }
`,
    },
    "a layout that nobody knows": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=three-button
//                            ^^^^^^^^^^^^ note/unknown-name: two-button
int main(void) { return 0; }
`,
    },
    "a rule that there is not": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire allow serial/baud-eror because "the PC is set so"
//             ^^^^^^^^^^^^^^^^ note/unknown-name: serial/baud-error
int main(void) { return 0; }
`,
    },
    "a directive that there is not": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
/* @wire servo pin=3 */
//       ^^^^^ note/unknown-name: servo
void setup() {}
void loop() {}
`,
    },
  },
  right: {
    "pins in every usual spelling": {
      "ferry.ino": `
// @wire board ATmega328P clock=16MHz
// @wire ps2 clock=2 data=PD3 pullups=external
// @wire serial uart=0 rts=D4 dtr=A3 report=wheel shifter=none
void setup() {
}
void loop() {
}
`,
    },
    "a chip by the name that is printed on it": {
      "main.c": `
// @wire board ATTINY2313 clock=8MHz
// @wire serial uart=0 report=two-button
int main(void) { return 0; }
`,
    },
    "rules of every group": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire allow board/clock-unknown because "1"
// @wire allow ps2/wait-forever because "2"
// @wire allow serial/idle-level because "3"
// @wire allow report/layout because "4"
int main(void) { return 0; }
`,
    },
    "quantities of both sides": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
#define HOLD_US 100
// @wire means serial.bit-time
#define BIT_US 833
int main(void) { return 0; }
`,
    },
    "every layout of the serial side": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=b.0 right=b.1 into out
void two(int8_t dx, int8_t dy, uint8_t b, uint8_t out[3]) { out[0] = dx | dy | b; }
// @wire encodes wheel from x=dx y=-dy left=b.0 right=b.1 wheel=w into out
void wheel(int8_t dx, int8_t dy, uint8_t b, int8_t w, uint8_t out[4]) { out[0] = dx | dy | b | w; }
int main(void) { return 0; }
`,
    },
  },
});
