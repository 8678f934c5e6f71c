import { clockUnknown } from "../../../../src-core/checks/board/clock-unknown.ts";
import { ruleTests } from "../harness.ts";

ruleTests(clockUnknown, {
  wrong: {
    "a divisor and no clock": {
      "main.c": `
// @wire board atmega328p
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  //      ^^^ board/clock-unknown: clock
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    "neither chip nor clock": {
      "main.c": `
#include <avr/io.h>
int main(void) {
  UBRR0 = 103;
  //      ^^^ board/clock-unknown: chip
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "said once, not for every set-up": {
      "main.c": `
// @wire board atmega2560
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  //      ^^^ board/clock-unknown: clock
  UBRR1 = 103;
  UCSR0B = _BV(TXEN0);
  UCSR1B = _BV(TXEN1);
  for (;;) {
  }
}
`,
    },
    "a divisor that comes through a helper": {
      "uart.c": `
// @wire board atmega328p
#include <avr/io.h>
void uart_init(unsigned int divisor) {
  UBRR0H = divisor >> 8;
  UBRR0L = divisor;
  UCSR0B = _BV(TXEN0);
}
int main(void) {
  uart_init(416);
  //        ^^^ board/clock-unknown: clock
  for (;;) {
  }
}
`,
    },
    "F_CPU that only the build defines": {
      "uart.c": `
// @wire board atmega328p
#include <avr/io.h>
#define BAUD 1200
int main(void) {
  UBRR0 = F_CPU / 16 / BAUD - 1;
  //      ^^^^^^^^^^^^^^^^^^^^^ board/clock-unknown: clock
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "a constant that a note calls a divisor": {
      "uart.c": `
// @wire board stm32f051r8
// @wire means serial.divisor
const unsigned brr = 40000;
//                   ^^^^^ board/clock-unknown: clock
int main(void) {
  return (int)brr;
}
`,
    },
  },
  right: {
    "the clock in a note": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "the clock in edgewise.json": {
      "edgewise.json": `{ "board": { "chip": "atmega328p", "clock": "16MHz" } }`,
      "main.c": `
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "the clock as F_CPU in a header": {
      "board.h": `
#define F_CPU 16000000UL
`,
      "main.c": `
// @wire board atmega328p
#include "board.h"
#include <avr/io.h>
int main(void) {
  UBRR0 = F_CPU / 16 / 1200 - 1;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "the clock among the defines of edgewise.json": {
      "edgewise.json": `{ "board": { "chip": "atmega328p" }, "defines": { "F_CPU": "16000000UL" } }`,
      "main.c": `
#include <avr/io.h>
int main(void) {
  UBRR0 = F_CPU / 16 / 1200 - 1;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "the serial class of the core makes 1200 baud at any clock": {
      "ferry.ino": `
// @wire board atmega328p
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
}
`,
    },
    "nothing that needs the clock": {
      "main.c": `
// @wire board atmega328p
#include <avr/io.h>
int main(void) {
  DDRB = _BV(PB5);
  for (;;) {
    PORTB ^= _BV(PB5);
  }
}
`,
    },
  },
});
