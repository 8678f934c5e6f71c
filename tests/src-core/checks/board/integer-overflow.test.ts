import { integerOverflow } from "../../../../src-core/checks/board/integer-overflow.ts";
import { ruleTests } from "../harness.ts";

// int has 16 bits on AVR (avr-gcc, "Types and data layout"); overflow of a signed type is undefined, ISO C11
// 6.5p5; a shift by the width or more is undefined, ISO C11 6.5.7p3. What narrows: ISO C11 6.3.1.3.

ruleTests(integerOverflow, {
  wrong: {
    // 16 * 9600 = 153600 does not fit 16 bits; the first factor decides.
    "the classic divisor in int": {
      "main.c": `
// @wire board atmega328p
#define F_CPU 16000000
#define BAUD 9600
#include <avr/io.h>
int main(void) {
  UBRR0 = F_CPU / (16 * BAUD) - 1;
  //               ^^^^^^^^^ board/integer-overflow: 153600
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "a minute in milliseconds": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
const unsigned long TIMEOUT = 60 * 1000;
//                            ^^^^^^^^^ board/integer-overflow: 60000
void setup() {
}
void loop() {
  if (millis() > TIMEOUT) {
    setup();
  }
}
`,
    },
    "a shift past the width of int": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static uint32_t flags;
int main(void) {
  flags |= 1 << 20;
  //       ^^^^^^^ board/integer-overflow: 1048576
  return (int)flags;
}
`,
    },
    "a constant too wide for a byte": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
int main(void) {
  volatile uint8_t ticks = 300;
  //                       ^^^ board/integer-overflow: 44
  while (ticks--) {
  }
  return 0;
}
`,
    },
    "a decimal constant too wide for int": {
      "main.c": `
// @wire board atmega328p clock=16MHz
volatile int count = 40000;
//                   ^^^^^ board/integer-overflow: -25536
int main(void) {
  while (count > 0) {
    count--;
  }
  return 0;
}
`,
    },
    "a product in a macro that the author took for wide": {
      "timing.h": `
#define TICKS_PER_MS 250
#define SECOND (1000 * TICKS_PER_MS)
`,
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
#include "timing.h"
uint32_t deadline(uint32_t now) {
  return now + SECOND;
  //           ^^^^^^ board/integer-overflow: 250000
}
int main(void) {
  return (int)deadline(1);
}
`,
    },
    "no chip is said, but the headers are those of AVR": {
      "main.c": `
#include <avr/io.h>
uint32_t timeout = 60 * 1000;
//                 ^^^^^^^^^ board/integer-overflow: 60000
int main(void) {
  return timeout > 1;
}
`,
    },
    "an argument too wide for its parameter": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
static volatile uint8_t left;
static void start(uint8_t ms) { left = ms; }
int main(void) {
  start(1000);
  //    ^^^^ board/integer-overflow: 232
  return 0;
}
`,
    },
  },
  right: {
    "a suffix widens the product": {
      "main.c": `
// @wire board atmega328p
#define F_CPU 16000000UL
#define BAUD 9600
#include <avr/io.h>
int main(void) {
  UBRR0 = F_CPU / (16UL * BAUD) - 1;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "masks turned over": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  uint8_t mask = ~(1 << 2);
  PORTD &= ~(1 << PD2);
  PORTD &= ~_BV(PD3);
  DDRD = (uint8_t)~0x0C;
  DDRB = ~0x80;
  DDRC = ~_BV(7) & ~_BV(6);
  PORTB = ~0;
  return mask;
}
`,
    },
    "bytes of a wide constant": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#define DIVISOR 832
int main(void) {
  uint8_t high = 0xFF00 >> 8;
  UBRR0H = DIVISOR >> 8;
  UBRR0L = DIVISOR;
  OCR1AH = 1000 >> 8;
  OCR1AL = 1000 & 0xFF;
  UCSR0B = _BV(TXEN0);
  return high;
}
`,
    },
    "minus one as the largest value": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
volatile uint8_t none = -1;
volatile uint16_t never = -1;
volatile uint32_t longest = -1L;
int main(void) {
  return none + (int)never + (int)longest;
}
`,
    },
    "byte patterns in char": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
const char replies[] = {0xFA, 0xAA, 0x00};
volatile char last = 0xFE;
volatile int8_t sign = 0x80;
volatile int all = 0xFFFF;
int main(void) {
  return replies[0] + last + sign + all;
}
`,
    },
    "wide by its own size": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
const unsigned long HOUR = 60UL * 60 * 1000;
const long LIMIT = 100000;
#define MASK (1UL << 20)
uint16_t top = 1 << 15;
uint16_t product = 250U * 250U;
void setup() {
}
void loop() {
  if (millis() > HOUR + LIMIT + MASK + top + product) {
    setup();
  }
}
`,
    },
    "a cast that says so": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
volatile uint8_t low = (uint8_t)1000;
int main(void) {
  return low;
}
`,
    },
    "nothing tells how wide int is": {
      "main.c": `
unsigned long timeout = 60 * 1000;
int main(void) {
  return timeout > 1;
}
`,
    },
    "32 bits of int on another chip": {
      "main.c": `
// @wire board rp2040 clock=125MHz
volatile unsigned long timeout = 60 * 1000;
int main(void) {
  return (int)timeout;
}
`,
    },
  },
});
