import { pinConflict } from "../../../../src-core/checks/board/pin-conflict.ts";
import { ruleTests } from "../harness.ts";

// Pins of the UARTs: ATmega328P RXD PD0 (D0), TXD PD1 (D1); ATmega32U4 RXD1 PD2 (D0), TXD1 PD3 (D1); ATmega2560
// RXD0 PE0 (D0), TXD0 PE1 (D1): "Alternate Functions of Port D/E" of their datasheets.

ruleTests(pinConflict, {
  wrong: {
    "two lines on one pin": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=3 report=two-button
//                         ^ board/pin-conflict: D3
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
    "a PS/2 line on the receiver's pin": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=0 pullups=internal
//                        ^ board/pin-conflict: RXD
// @wire serial uart=0 report=two-button
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
    "the same pin by two names": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PD3
// @wire serial uart=0 rts=2 report=two-button
//                         ^ board/pin-conflict: PD2
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    "RTS on the transmitter's pin": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD1 report=two-button
//                         ^^^ board/pin-conflict: TXD
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    "clock and data on one pin": {
      "main.c": `
// @wire board atmega32u4 clock=16MHz
// @wire ps2 clock=PD0 data=PD0
//                          ^^^ board/pin-conflict: PD0
int main(void) {
  for (;;) {
  }
}
`,
    },
    "the other numbering of the UART's pins": {
      "ferry.ino": `
// @wire board atmega32u4 clock=16MHz
// @wire ps2 clock=0 data=4 pullups=internal
//                 ^ board/pin-conflict: RXD
// @wire serial uart=1 report=two-button
void setup() {
  Serial1.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
  },
  right: {
    "a pin for each line": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=3 pullups=internal
// @wire serial uart=0 rts=4 report=two-button
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
    "the receiver's pin while the receiver is off": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    "pins 0 and 1 where the UART is not used": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=2 data=0 pullups=internal
// @wire serial tx=1 report=two-button
void setup() {
}
void loop() {
}
`,
    },
    "pins 0 and 1 are another UART's on a larger chip": {
      "ferry.ino": `
// @wire board atmega2560 clock=16MHz
// @wire ps2 clock=2 data=0 pullups=internal
// @wire serial uart=1 report=two-button
void setup() {
  Serial1.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
    "the same bit of two ports": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock=PD2 data=PB2
// @wire serial uart=0 rts=PC2 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0) | _BV(RXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
  },
});
