import { divisorRange } from "../../../../src-core/checks/board/divisor-range.ts";
import { ruleTests } from "../harness.ts";

// UBRR has 12 bits, 0..4095: ATmega48A/PA/88A/PA/168A/PA/328/P datasheet (8271D), USART Register Description.
// TH1 has 8 bits: 8051 hardware manual (4316E), section 2.13.4.

ruleTests(divisorRange, {
  wrong: {
    // 16 MHz / 1200 = 13333: the factor 16 was forgotten; 13332 mod 4096 = 1044.
    "sixteen forgotten in the formula": {
      "main.c": `
// @wire board atmega328p
#define F_CPU 16000000UL
#define BAUD 1200
#include <avr/io.h>
int main(void) {
  UBRR0 = F_CPU / BAUD - 1;
  //      ^^^^^^^^^^^^^^^^ board/divisor-range: 13332
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    // 416 = 0x1A0: the low byte alone is 160.
    "the low byte alone": {
      "main.c": `
// @wire board atmega328p clock=8MHz
#include <avr/io.h>
int main(void) {
  UBRR0L = 416;
  //       ^^^ board/divisor-range: 416
  UCSR0B = (1 << TXEN0);
  for (;;) {
  }
}
`,
    },
    // 832 = 0x340: as a byte 64.
    "a byte as the parameter of the helper": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
static void uart_init(uint8_t divisor) {
  UBRR0 = divisor;
  UCSR0B = (1 << TXEN0);
}
int main(void) {
  uart_init(832);
  //        ^^^ board/divisor-range: 832
  for (;;) {
  }
}
`,
    },
    // 16 MHz / 16 / 110 - 1 = 9089.
    "a rate too low for the clock": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0H = 9090 >> 8;
  UBRR0L = 9090 & 0xFF;
  //       ^^^^^^^^^^^ board/divisor-range: 9090
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "an 8-bit register said by a note": {
      "main.c": `
// @wire board at89s52 clock=11.0592MHz
// @wire means serial.divisor
#define RELOAD 488
//             ^^^ board/divisor-range: 488
int main(void) {
  return RELOAD;
}
`,
    },
  },
  right: {
    "the largest value": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 4095;
  UCSR0A = _BV(U2X0);
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "both bytes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0H = 832 >> 8;
  UBRR0L = 832 & 0xFF;
  UCSR0B = (1 << TXEN0);
  for (;;) {
  }
}
`,
    },
    "the low byte, where it is enough": {
      "main.c": `
// @wire board atmega328p clock=1MHz
#include <avr/io.h>
int main(void) {
  UBRR0L = 51;
  UCSR0B = (1 << TXEN0);
  for (;;) {
  }
}
`,
    },
    "both bytes in a helper": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
static void uart_init(uint16_t divisor) {
  UBRR0H = divisor >> 8;
  UBRR0L = divisor;
  UCSR0B = (1 << TXEN0);
}
int main(void) {
  uart_init(832);
  for (;;) {
  }
}
`,
    },
    "both bytes, the low one first": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#define DIVISOR 832
int main(void) {
  UBRR0L = (uint8_t)(DIVISOR);
  UBRR0H = (uint8_t)(DIVISOR >> 8);
  UCSR0B = (1 << TXEN0);
  for (;;) {
  }
}
`,
    },
  },
});
