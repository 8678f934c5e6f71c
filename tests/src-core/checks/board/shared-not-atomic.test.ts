import { describe, expect, it } from "vitest";
import { sharedNotAtomic } from "../../../../src-core/checks/board/shared-not-atomic.ts";
import { editedText } from "../../../../src-core/edited-text.ts";
import { findingsIn, ruleTests } from "../harness.ts";
import { versionOf } from "../runs/versions.ts";

// An AVR reads and writes one byte at a time, and an interrupt may come between two of them: avr-libc user manual,
// <util/atomic.h>, whose example is a 16-bit counter that an interrupt handler changes. A bool or uint8_t is one byte.

ruleTests(sharedNotAtomic, {
  wrong: {
    "a count of milliseconds read while it may be counted": {
      "clock.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) { ticks++; }
static uint16_t now(void) {
  return ticks;
  //     ^^^^^ board/shared-not-atomic: ticks has 2 bytes
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = now() > 500;
  }
}
`,
    },
    "two counts that are read until they are alike": {
      "two.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t ticks, edges;
ISR(TIMER0_COMPA_vect) { ticks++; edges++; }
static uint16_t now(void) {
  uint16_t one, other;
  do {
    one = ticks;
    //    ^^^^^ board/shared-not-atomic: ticks has 2 bytes
    other = edges;
    //      ^^^^^ board/shared-not-atomic: edges has 2 bytes
  } while (one != other);
  return one;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = now() > 500;
  }
}
`,
    },
    "a sum taken and set back in a sketch": {
      "sum.ino": `
// @wire board atmega328p clock=16MHz
volatile int sumX = 0;
void edge() {
  sumX += digitalRead(3) ? 1 : -1;
}
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(2), edge, FALLING);
}
void loop() {
  int x = sumX;
  //      ^^^^ board/shared-not-atomic: sumX
  sumX = 0;
//^^^^ board/shared-not-atomic: sumX
  Serial.write((uint8_t)x);
}
`,
    },
    "a count-down that a loop waits for": {
      "wait.c": `
// @wire board attiny85 clock=8MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile unsigned int left;
ISR(TIMER0_OVF_vect) {
  if (left) left--;
}
void pause(void) {
  left = 300;
//^^^^ board/shared-not-atomic: left
  while (left > 0) {
  //     ^^^^ board/shared-not-atomic: left
  }
}
int main(void) {
  TIMSK = _BV(TOIE0);
  sei();
  for (;;) {
    pause();
    PORTB ^= 1;
  }
}
`,
    },
    "a member of an object with a handler of its own": {
      "wheel.ino": `
// @wire board atmega328p clock=16MHz
class Wheel {
 public:
  void turned() { steps += 1; }
  long taken() {
    long value = steps;
    //           ^^^^^ board/shared-not-atomic: steps has 4 bytes
    return value;
  }
 private:
  volatile long steps = 0;
};
Wheel wheel;
void onEdge() { wheel.turned(); }
void setup() {
  Serial.begin(1200);
  attachInterrupt(0, onEdge, RISING);
}
void loop() {
  Serial.println(wheel.taken());
}
`,
    },
    "a struct copied while its parts may change": {
      "copy.c": `
// @wire board atmega168 clock=8MHz
#include <avr/io.h>
#include <avr/interrupt.h>
struct motion { int8_t x; int8_t y; };
static volatile struct motion latest;
ISR(INT0_vect) {
  latest.x = PINB;
  latest.y = PINC;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    struct motion here = latest;
    //                   ^^^^^^ board/shared-not-atomic: latest has 2 bytes
    PORTD = here.x + here.y;
  }
}
`,
    },
    "a period that the main code sets for a handler": {
      "period.c": `
// @wire board atmega8 clock=8MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t period = 1000;
static volatile uint8_t beats;
ISR(TIMER1_COMPA_vect) {
  OCR1A += period;
  beats++;
}
int main(void) {
  TIMSK = _BV(OCIE1A);
  sei();
  for (;;) {
    if (beats == 10) {
      period = PINB << 4;
    //^^^^^^ board/shared-not-atomic: period
    }
  }
}
`,
    },
    "an element of an array of words": {
      "queue.c": `
// @wire board atmega32 clock=8MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t counts[2];
ISR(INT0_vect) { counts[0]++; }
ISR(INT1_vect) { counts[1]++; }
static uint16_t difference(void) {
  return counts[0] - counts[1];
  //     ^^^^^^^^^ board/shared-not-atomic: counts
}
int main(void) {
  GICR = _BV(INT0) | _BV(INT1);
  sei();
  for (;;) {
    PORTB = difference();
  }
}
`,
    },
    "interrupts let in again too soon": {
      "soon.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint32_t edges;
ISR(INT0_vect) { edges++; }
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    cli();
    PORTB = 1;
    sei();
    uint32_t seen = edges;
    //              ^^^^^ board/shared-not-atomic: edges has 4 bytes
    PORTC = seen >> 8;
  }
}
`,
    },
  },
  right: {
    "an atomic block": {
      "clock.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/atomic.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) { ticks++; }
static uint16_t now(void) {
  uint16_t value;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    value = ticks;
  }
  return value;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = now() > 500;
  }
}
`,
    },
    "the core's two functions": {
      "sum.ino": `
// @wire board atmega328p clock=16MHz
volatile int sumX = 0;
void edge() {
  sumX += digitalRead(3) ? 1 : -1;
}
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(2), edge, FALLING);
}
void loop() {
  noInterrupts();
  int x = sumX;
  sumX = 0;
  interrupts();
  Serial.write((uint8_t)x);
}
`,
    },
    "the status register kept": {
      "kept.c": `
// @wire board attiny2313 clock=8MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile unsigned int left;
ISR(TIMER0_OVF_vect) {
  if (left) left--;
}
static unsigned int left_now(void) {
  uint8_t status = SREG;
  cli();
  unsigned int value = left;
  SREG = status;
  return value;
}
int main(void) {
  TIMSK = _BV(TOIE0);
  sei();
  for (;;) {
    PORTB = left_now() == 0;
  }
}
`,
    },
    "functions of their own that lock, in a file of their own": {
      "lock.h": `
void lock(void);
void unlock(void);
`,
      "lock.c": `
#include "lock.h"
#include <avr/interrupt.h>
void lock(void) { cli(); }
void unlock(void) { sei(); }
`,
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include "lock.h"
static volatile uint16_t edges;
ISR(INT0_vect) { edges++; }
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    uint16_t seen;
    lock();
    seen = edges;
    unlock();
    PORTB = seen;
  }
}
`,
    },
    "an object that locks while it lives": {
      "guard.ino": `
// @wire board atmega328p clock=16MHz
class Quiet {
 public:
  Quiet() : status(SREG) { cli(); }
  ~Quiet() { SREG = status; }
 private:
  uint8_t status;
};
volatile unsigned long edges = 0;
void edge() { edges++; }
void setup() {
  Serial.begin(1200);
  attachInterrupt(0, edge, RISING);
}
unsigned long taken() {
  Quiet quiet;
  unsigned long value = edges;
  edges = 0;
  return value;
}
void loop() {
  Serial.println(taken());
}
`,
    },
    "single bytes": {
      "ring.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
#include <stdbool.h>
static volatile uint8_t ring[16];
static volatile uint8_t head;
static volatile bool full;
ISR(INT0_vect) {
  ring[head & 15] = PINB;
  head++;
  full = head > 200;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  uint8_t tail = 0;
  for (;;) {
    if (head != tail && !full) {
      PORTB = ring[tail++ & 15];
    }
  }
}
`,
    },
    "a frame that a flag hands over": {
      "frame.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t frame;
static volatile uint8_t whole;
ISR(INT0_vect) {
  static uint8_t bit;
  static uint16_t bits;
  bits = (bits >> 1) | (PIND & 8 ? 0x400 : 0);
  if (++bit == 11) {
    bit = 0;
    frame = bits;
    whole = 1;
  }
}
static uint8_t byte_of_frame(void) {
  return (frame >> 1) & 0xFF;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (whole) {
      whole = 0;
      PORTB = byte_of_frame();
    }
    while (!whole) {
    }
    PORTC = frame >> 8;
  }
}
`,
    },
    "read until two readings agree": {
      "twice.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) { ticks++; }
static uint16_t now(void) {
  uint16_t value;
  do {
    value = ticks;
  } while (value != ticks);
  return value;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = now() > 500;
  }
}
`,
    },
    "read twice, again and again until both are alike": {
      "twice.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint32_t ticks;
ISR(TIMER0_COMPA_vect) { ticks++; }
static uint32_t now(void) {
  uint32_t one, other;
  do {
    one = ticks;
    other = ticks;
  } while (one != other);
  return one;
}
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = now() > 500;
  }
}
`,
    },
    "a whole firmware whose clock is read twice until both are alike": versionOf({ stroke: "all-at-once" }, [
      `  uint16_t now;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    now = ticks;
  }
  return now;`,
      `  uint16_t one, other;
  do {
    one = ticks;
    other = ticks;
  } while (one != other);
  return one;`,
    ]),
    "the one interrupt off while it is read": {
      "masked.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t edges;
ISR(INT0_vect) { edges++; }
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    uint16_t seen;
    EIMSK &= ~_BV(INT0);
    seen = edges;
    edges = 0;
    EIMSK |= _BV(INT0);
    PORTB = seen;
  }
}
`,
    },
    "before interrupts come": {
      "before.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t period;
ISR(TIMER1_COMPA_vect) { OCR1A += period; }
int main(void) {
  period = 2000;
  TIMSK1 = _BV(OCIE1A);
  sei();
  for (;;) {
  }
}
`,
    },
    "a chip that reads 32 bits at once": {
      "wide.c": `
// @wire board stm32f103c8 clock=72MHz
#include <stdint.h>
static volatile uint32_t ticks;
void SysTick_Handler(void) { ticks++; }
int main(void) {
  uint32_t since = ticks;
  for (;;) {
    if (ticks - since > 500) since = ticks;
  }
}
`,
    },
    "a state whose upper byte is always 0": {
      "state.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
enum state { IDLE, RECEIVING, DONE };
static volatile enum state state;
static volatile int failed = 0;
ISR(INT0_vect) {
  state = PIND & 8 ? RECEIVING : DONE;
  failed = 1;
}
int main(void) {
  EIMSK = _BV(INT0);
  sei();
  for (;;) {
    if (state == IDLE) PORTB = 1;
    if (failed) PORTB = 2;
    failed = 0;
  }
}
`,
    },
    "the low byte alone": {
      "low.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
static volatile uint16_t ticks;
ISR(TIMER0_COMPA_vect) { ticks++; }
int main(void) {
  TIMSK0 = _BV(OCIE0A);
  sei();
  for (;;) {
    PORTB = (uint8_t)ticks;
  }
}
`,
    },
  },
});

describe("what is read by one statement and changed by the next is put into one block", () => {
  const sketch = (turn: string) => `// @wire board atmega328p clock=16MHz
volatile int dx, dy;
volatile unsigned int edges;
int x, y;
void edge() {
  dx += digitalRead(3);
  dy -= digitalRead(3);
  edges++;
}
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  attachInterrupt(digitalPinToInterrupt(2), edge, FALLING);
}
void loop() {
${turn}}
`;
  const fixedTurns = (turn: string): ReadonlySet<string> => {
    const text = sketch(turn);
    const findings = findingsIn({ "mouse.ino": text }, [sharedNotAtomic]);
    const fixed = findings.map(({ fixes: [fix] }) => editedText(text, fix?.edits ?? []));
    return new Set(fixed.map((each) => /void loop\(\) \{\n([\s\S]*)\}\n$/.exec(each)?.[1] ?? ""));
  };

  it("with all that stands between them", () => {
    const turn = "  x = constrain(dx, -9, 9);\n  y = dy;\n  dx -= x;\n  dy -= y;\n  Serial.write(x + y);\n";
    expect([...fixedTurns(turn)]).toEqual([
      "  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { x = constrain(dx, -9, 9);\n  y = dy;\n  dx -= x;\n  dy -= y; }\n  Serial.write(x + y);\n",
    ]);
  });

  it("with variables declared in front, which are known behind it", () => {
    const turn =
      "  int right = dx;\n  const byte one = 1;\n  unsigned long up = dy;\n  dy = 0;\n  Serial.write(right + up + one);\n";
    expect(fixedTurns(turn)).toContain(
      "  int right = dx;\n  const byte one = 1;\n  unsigned long up; ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { up = dy;\n  dy = 0; }\n  Serial.write(right + up + one);\n",
    );
  });

  it("and nothing that has to do with other variables", () => {
    const turn = "  x = dx;\n  dx = 0;\n  y = edges;\n  Serial.write(x + y);\n";
    expect(fixedTurns(turn)).toEqual(
      new Set([
        "  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { x = dx;\n  dx = 0; }\n  y = edges;\n  Serial.write(x + y);\n",
        "  x = dx;\n  dx = 0;\n  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { y = edges; }\n  Serial.write(x + y);\n",
      ]),
    );
  });
});
