import { sharedNotVolatile } from "../../../../src-core/checks/board/shared-not-volatile.ts";
import { ruleTests } from "../harness.ts";

// Accesses to an object that an interrupt handler changes must be volatile: ISO C11 5.1.2.3 and 6.7.3p7; avr-libc
// user manual, FAQ, "My program doesn't recognize a variable updated within an interrupt routine".

ruleTests(sharedNotVolatile, {
  wrong: {
    "a flag that the main code waits for": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t ready;
//             ^^^^^ board/shared-not-volatile: ready
ISR(INT0_vect) {
  ready = 1;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (ready) {
      PORTB ^= _BV(PB5);
    }
  }
}
`,
    },
    "an attached handler of a sketch": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
uint8_t received = 0;
//      ^^^^^^^^ board/shared-not-volatile: received
volatile bool complete = false;
void clockFell() {
  received = (received >> 1) | (digitalRead(3) ? 0x80 : 0);
  complete = true;
}
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  if (complete) {
    complete = false;
    digitalWrite(13, received & 1);
  }
}
`,
    },
    "a member written by a handler, through an object": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
class Port {
 public:
  void fell() { bits++; }
  uint8_t count() const { return bits; }
 private:
  uint8_t bits = 0;
  //      ^^^^ board/shared-not-volatile: bits
};
Port mouse;
void clockFell() { mouse.fell(); }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  digitalWrite(13, mouse.count() & 1);
}
`,
    },
    "an array that both use": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t ring[16];
//             ^^^^ board/shared-not-volatile: ring
static volatile uint8_t head;
static uint8_t tail;
ISR(INT0_vect) {
  ring[head] = PIND;
  head = (head + 1) % 16;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    while (tail != head) {
      PORTB = ring[tail];
      tail = (tail + 1) % 16;
    }
  }
}
`,
    },
    "a member of a struct": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static struct {
  uint8_t bit;
  uint8_t value;
} frame;
//^^^^^ board/shared-not-volatile: frame
ISR(INT0_vect) {
  frame.value = (frame.value << 1) | (PIND & 1);
  frame.bit++;
}
int main(void) {
  sei();
  while (frame.bit < 11) {
  }
  return frame.value;
}
`,
    },
    "a flag that the main code raises for the handler": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t sending;
//             ^^^^^^^ board/shared-not-volatile: sending
static volatile uint8_t count;
ISR(INT0_vect) {
  if (sending) {
    return;
  }
  count++;
}
int main(void) {
  sei();
  for (;;) {
    sending = 1;
    while (PIND & _BV(PD2)) {
    }
    sending = 0;
  }
}
`,
    },
    "a handler in another file": {
      "clock.h": `
#include <stdint.h>
extern uint16_t ticks;
`,
      "clock.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include "clock.h"
uint16_t ticks;
//       ^^^^^ board/shared-not-volatile: ticks
static void tick(void) { ticks++; }
ISR(TIMER0_COMPA_vect) {
  tick();
}
`,
      "main.c": `
#include <avr/interrupt.h>
#include "clock.h"
int main(void) {
  sei();
  while (ticks < 100) {
  }
  return 0;
}
`,
    },
  },
  right: {
    volatile: {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint8_t ready;
ISR(INT0_vect) {
  ready = 1;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (ready) {
      ready = 0;
    }
  }
}
`,
    },
    "only the handler uses it": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t bits;
static volatile uint8_t done;
ISR(INT0_vect) {
  static uint8_t value;
  value = (value << 1) | (PIND & 1);
  if (++bits == 11) {
    bits = 0;
    done = value;
  }
}
int main(void) {
  sei();
  for (;;) {
    PORTB = done;
  }
}
`,
    },
    "set once, before interrupts are on": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
uint8_t dataPin;
volatile uint8_t level;
void clockFell() { level = digitalRead(dataPin); }
void setup() {
  dataPin = 3;
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  digitalWrite(13, level);
}
`,
    },
    "set once, right after interrupts are on": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
uint8_t dataPin;
volatile uint8_t level;
void clockFell() { level = digitalRead(dataPin); }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
  dataPin = 3;
}
void loop() {
  digitalWrite(13, level);
}
`,
    },
    "constants that both read": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static const uint8_t limits[] = {1, 2, 3};
static uint8_t table[] = {1, 2, 3};
volatile uint8_t n;
ISR(INT0_vect) {
  n = limits[n % 3] + table[n % 3];
}
int main(void) {
  sei();
  for (;;) {
    PORTB = limits[0] + table[1];
  }
}
`,
    },
    "taken over while interrupts are off": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/atomic.h>
static uint16_t ticks;
ISR(TIMER0_COMPA_vect) {
  ticks++;
}
static uint16_t now(void) {
  uint16_t copy;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    copy = ticks;
  }
  return copy;
}
int main(void) {
  sei();
  while (now() < 100) {
  }
  return 0;
}
`,
    },
    "taken over between cli and sei": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
int travel;
void moved() { travel++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), moved, FALLING);
}
void loop() {
  noInterrupts();
  int taken = travel;
  travel = 0;
  interrupts();
  digitalWrite(13, taken & 1);
}
`,
    },
    "a volatile object of a class": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
struct Frame {
  uint8_t bit;
  uint8_t value;
};
volatile Frame frame;
void clockFell() {
  frame.value = digitalRead(3);
  frame.bit++;
}
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  if (frame.bit == 11) {
    frame.bit = 0;
  }
}
`,
    },
    "locals of a function that both call": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static uint8_t twice(uint8_t value) {
  uint8_t result = value;
  result += value;
  return result;
}
volatile uint8_t seen;
ISR(INT0_vect) {
  seen = twice(PIND);
}
int main(void) {
  sei();
  for (;;) {
    PORTB = twice(seen);
  }
}
`,
    },
  },
});
