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
  },
});
