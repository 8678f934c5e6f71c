import { waitForever } from "../../../../src-core/checks/ps2/wait-forever.ts";
import { ruleTests } from "../harness.ts";

// That a host gives up: 15 ms for the first clock and 2 ms for the byte, The PS/2 Mouse/Keyboard Protocol (2003),
// Host-to-Device, Fig. 4; 2 ms for a byte from the mouse, Technical Reference, 5170, p. 1-32. Without a mouse no edge
// ever comes.

const notes = "// @wire board atmega328p clock=16MHz\n// @wire ps2 clock=PD2 data=PD3 pullups=external\n";
const avr = `${notes}#include <avr/io.h>
#include <avr/interrupt.h>
#include <stdbool.h>
#include <util/delay.h>
`;
const sketch = "// @wire ps2 clock=2 data=3 pullups=external\n#define CLK 2\n#define DAT 3\n";
const takes = (wait: string, before = ""): string => `${avr}${before}
static uint8_t bit(void) {
${wait}  return PIND & _BV(PD3);
}
int main(void) {
  for (;;) PORTB = bit();
}
`;
/** A handler that counts the bits of a byte and then sets a flag. */
const handler = `${avr}
static volatile uint8_t bits, shift, answer;
static volatile bool answered;
ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  if (++bits == 11) {
    bits = 0;
    answer = shift;
    answered = true;
  }
}
`;
/** A handler that puts bytes into a ring, and a reader that gives nothing where the ring is empty. */
const ring = `${avr}
static volatile uint8_t bits, shift, head, tail, kept[16];
ISR(INT0_vect) {
  shift = shift >> 1 | (PIND & _BV(PD3) ? 0x80 : 0);
  if (++bits == 11) {
    bits = 0;
    kept[head] = shift;
    head = (head + 1) & 15;
  }
}
static bool take(uint8_t *value) {
  if (head == tail) {
    return false;
  }
  *value = kept[tail];
  tail = (tail + 1) & 15;
  return true;
}
static bool available(void) { return head != tail; }
static int next(void) {
  if (!available()) {
    return -1;
  }
  const uint8_t value = kept[tail];
  tail = (tail + 1) & 15;
  return value;
}
`;
const starts = "int main(void) {\n  EICRA = _BV(ISC01);\n  EIMSK = _BV(INT0);\n  sei();\n";

ruleTests(waitForever, {
  wrong: {
    "a port register": {
      "main.c": takes(`  while (PIND & _BV(PD2)) {
  //     ^^^^^^^^^^^^^^^ ps2/wait-forever: the clock
  }
`),
    },
    "the macros of the chip's library": {
      "main.c": takes(`  loop_until_bit_is_clear(PIND, PD2);
//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/wait-forever
`),
    },
    "core functions, two loops in one function": {
      "mouse.ino": `${sketch}
void waitFall() {
  while (digitalRead(CLK) == LOW) ;
  //     ^^^^^^^^^^^^^^^^^^^^^^^ ps2/wait-forever: the clock
  while (digitalRead(CLK) == HIGH) ;
}
byte value;
void setup() {}
void loop() {
  waitFall();
  value = value << 1 | digitalRead(DAT);
}
`,
    },
    "macros that paste names": {
      "tiny.c": `/* @wire board attiny85 clock=8MHz
   @wire ps2 clock=PB2 data=PB0 pullups=external */
#include <avr/io.h>
#define GLUE_(a, b) a##b
#define GLUE(a, b) GLUE_(a, b)
#define CLOCK_PORT B
#define CLOCK_BIT 2
#define HIGH(line) (GLUE(PIN, line##_PORT) & _BV(line##_BIT))
#define UNTIL_FALL() do { while (!HIGH(CLOCK)) {} while (HIGH(CLOCK)) {} } while (0)
uint8_t last;
int main(void) {
  for (;;) {
    UNTIL_FALL();
//  ^^^^^^^^^^^^ ps2/wait-forever: the clock
    last = PINB & 1;
  }
}
`,
    },
    "a class": {
      "mouse.ino": `${sketch}
class Mouse {
public:
  Mouse(uint8_t clock, uint8_t data) : clock_(clock), data_(data) {}
  uint8_t next() {
    until(LOW);
    return digitalRead(data_);
  }
private:
  void until(uint8_t level) {
    while (digitalRead(clock_) != level) {}
    //     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/wait-forever
  }
  const uint8_t clock_, data_;
};
Mouse mouse(CLK, DAT);
uint8_t value;
void setup() {}
void loop() { value = mouse.next(); }
`,
    },
    "a flag that the clock's handler sets": {
      "main.c": `${handler}${starts}  for (;;) {
    while (!answered) {
    //     ^^^^^^^^^ ps2/wait-forever: answered
    }
    answered = false;
    PORTB = answer;
  }
}
`,
    },
    "a flag in a class, looked at by a function": {
      "mouse.ino": `${sketch}
class Port {
public:
  void fell() {
    shift_ = shift_ >> 1 | (digitalRead(DAT) ? 0x80 : 0);
    if (++bits_ == 11) { bits_ = 0; head_ = (head_ + 1) % 8; ring_[head_] = shift_; }
  }
  bool available() const { return head_ != tail_; }
  uint8_t read() {
    while (!available()) {}
    //     ^^^^^^^^^^^^ ps2/wait-forever: head_
    tail_ = (tail_ + 1) % 8;
    return ring_[tail_];
  }
private:
  volatile uint8_t ring_[8], head_ = 0, tail_ = 0, shift_ = 0, bits_ = 0;
};
Port port;
void fell() { port.fell(); }
uint8_t value;
void setup() { attachInterrupt(digitalPinToInterrupt(CLK), fell, FALLING); }
void loop() { value = port.read(); }
`,
    },
    "an endless loop left at the right level": {
      "main.c": takes(`  for (;;) {
//^^^ ps2/wait-forever: the clock
    if (!(PIND & (1 << 2))) {
      break;
    }
    _delay_us(2);
  }
`),
    },
    "a reader that gives nothing until there is something": {
      "main.c": `${handler}
static bool take(uint8_t *value) {
  if (!answered) {
    return false;
  }
  answered = false;
  *value = answer;
  return true;
}
${starts}  uint8_t value;
  for (;;) {
    while (!take(&value)) {
    //     ^^^^^^^^^^^^^ ps2/wait-forever: answered
    }
    PORTB = value;
  }
}
`,
    },
    "a ring that is asked until it gives something": {
      "main.c": `${ring}${starts}  uint8_t value;
  for (;;) {
    for (;;) {
//  ^^^ ps2/wait-forever: head
      if (take(&value)) break;
      PINC = 1;
    }
    PORTB = value;
  }
}
`,
    },
    "a ring that is asked until a certain byte comes": {
      "main.c": `${ring}${starts}  uint8_t value;
  for (;;) {
    while (!take(&value) || value != 0xAA) {
    //     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/wait-forever: head
    }
    PORTB = value;
  }
}
`,
    },
    "a ring that gives -1 until there is something": {
      "main.c": `${ring}${starts}  int value;
  for (;;) {
    while ((value = next()) < 0) {
    //     ^^^^^^^^^^^^^^^^^^^^ ps2/wait-forever: head
    }
    PORTB = value;
  }
}
`,
    },
    "other work is done while it waits": {
      "main.c": `${handler}
static uint8_t waiting(void) {
  while (!answered) {
  //     ^^^^^^^^^ ps2/wait-forever
    PORTB ^= _BV(PB5);
  }
  answered = false;
  return answer;
}
${starts}  for (;;) {
    PORTC = waiting();
  }
}
`,
    },
  },
  right: {
    "a counter in the condition": {
      "main.c": takes("  uint16_t looks = 0;\n  while ((PIND & _BV(PD2)) && ++looks < 30000) {\n  }\n"),
    },
    "a counter that leaves": {
      "main.c": takes(
        "  uint16_t left = 5000;\n  while (PIND & _BV(PD2)) {\n    if (--left == 0) {\n      return 0xFF;\n    }\n    _delay_us(5);\n  }\n",
      ),
    },
    "a limit that the caller gives": {
      "main.c": `${avr}
bool until_low(uint16_t limit) {
  uint16_t looks = 0;
  while (PIND & _BV(PD2)) {
    if (looks++ >= limit) {
      return false;
    }
  }
  return true;
}
`,
    },
    "as many looks as a loop counts": {
      "mouse.ino": `${sketch}
bool waitFor(byte level) {
  for (unsigned int i = 0; i < 4000; i++) {
    if (digitalRead(CLK) == level) return true;
  }
  return false;
}
void setup() {}
void loop() { waitFor(LOW); }
`,
    },
    "a ring that is emptied": {
      "main.c": `${ring}${starts}  uint8_t value;
  for (;;) {
    while (take(&value)) {
      PORTB = value;
    }
  }
}
`,
    },
    "a ring that is emptied, left when nothing is in it": {
      "main.c": `${ring}${starts}  uint8_t value;
  for (;;) {
    for (;;) {
      if (!take(&value)) break;
      PORTB = value;
    }
  }
}
`,
    },
    "a ring that is emptied until it gives -1": {
      "main.c": `${ring}${starts}  int value;
  for (;;) {
    while ((value = next()) >= 0) {
      PORTB = value;
    }
  }
}
`,
    },
    "a ring that is emptied as long as something is in it": {
      "main.c": `${ring}${starts}  for (;;) {
    while (available()) {
      PORTB = next();
    }
    while (head != tail) {
      PORTB = kept[tail];
      tail = (tail + 1) & 15;
    }
  }
}
`,
    },
    "a flag that is taken down in the turn": {
      "main.c": `${handler}${starts}  for (;;) {
    while (answered) {
      answered = false;
      PORTB = answer;
    }
  }
}
`,
    },
    "a time": {
      "mouse.ino": `${sketch}
bool waitFor(byte level) {
  unsigned long since = millis();
  while (digitalRead(CLK) != level) {
    if (millis() - since > 25) return false;
  }
  return true;
}
void setup() {}
void loop() { waitFor(LOW); }
`,
    },
    "a flag that a timer's handler sets": {
      "main.c": `${handler}
static volatile bool late;
ISR(TIMER0_COMPA_vect) { late = true; }
${starts}  for (;;) {
    late = false;
    while (!answered && !late) {
    }
    answered = false;
    PORTB = answer;
  }
}
`,
    },
    "the same flag is set by a timer when it is late": {
      "main.c": `${handler}
ISR(TIMER0_COMPA_vect) { answered = true; }
${starts}  for (;;) {
    while (!answered) {
    }
    answered = false;
    PORTB = answer;
  }
}
`,
    },
    "a count that a function keeps": {
      "main.c": `${avr}
static uint16_t waited;
static bool too_long(void) { return ++waited > 10000; }
static bool high(void) { return PIND & _BV(PD2); }
int main(void) {
  for (;;) {
    waited = 0;
    while (high() && !too_long()) {
    }
    PORTB = PIND & _BV(PD3);
  }
}
`,
    },
    "the timer's own register": {
      "main.c": takes("  TCNT1 = 0;\n  while ((PIND & _BV(PD2)) && TCNT1 < 5000) {\n  }\n"),
    },
    "the watchdog ends it": {
      "main.c": `${avr}#include <avr/wdt.h>
int main(void) {
  wdt_enable(WDTO_120MS);
  for (;;) {
    while (PIND & _BV(PD2)) {
    }
    wdt_reset();
    PORTB = PIND & _BV(PD3);
  }
}
`,
    },
    "the loop of the program, which looks and goes on": {
      "main.c": `${handler}${starts}  for (;;) {
    if (answered) {
      answered = false;
      PORTB = answer;
    }
  }
}
`,
    },
    "another pin and the UART are waited for": {
      "main.c": `${avr}
int main(void) {
  for (;;) {
    while (PIND & _BV(PD4)) {
    }
    while (!(UCSR0A & _BV(UDRE0))) {
    }
    UDR0 = 'M';
  }
}
`,
    },
    "a function that is not there may end it": {
      "mouse.ino": `${sketch}
bool expired();
void waitFall() {
  while (digitalRead(CLK) == HIGH) {
    if (expired()) return;
  }
}
void setup() {}
void loop() { waitFall(); }
`,
    },
  },
});
