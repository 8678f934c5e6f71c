import { pinNoInterrupt } from "../../../../src-core/checks/board/pin-no-interrupt.ts";
import { ruleTests } from "../harness.ts";

// External interrupts: ATmega328P has INT0 (PD2, D2) and INT1 (PD3, D3) only; ATmega32U4 INT0..3 and INT6;
// ATmega2560 INT0..7; ATtiny85 INT0 (PB2): "External Interrupts" of their datasheets. Numbers that attachInterrupt
// takes: pins_arduino.h and WInterrupts.c of Debian package arduino-core-avr 1.8.7.

ruleTests(pinNoInterrupt, {
  wrong: {
    "a pin that has none": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
const uint8_t CLOCK_PIN = 4;
volatile uint8_t count;
void fell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(CLOCK_PIN), fell, FALLING);
  //                                    ^^^^^^^^^ board/pin-no-interrupt: PD4 (pin 4)
}
void loop() {
}
`,
    },
    "the pin in place of the interrupt's number": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  pinMode(2, INPUT_PULLUP);
  attachInterrupt(2, fell, FALLING);
  //              ^ board/pin-no-interrupt: digitalPinToInterrupt(2)
}
void loop() {
}
`,
    },
    "a pin constant in place of the interrupt's number": {
      "ferry.ino": `
// @wire board atmega32u4 clock=16MHz
#define CLOCK_PIN 3
volatile uint8_t count;
void fell() { count++; }
void setup() {
  pinMode(CLOCK_PIN, INPUT_PULLUP);
  attachInterrupt(CLOCK_PIN, fell, FALLING);
  //              ^^^^^^^^^ board/pin-no-interrupt: digitalPinToInterrupt(CLOCK_PIN)
}
void loop() {
}
`,
    },
    "a vector that the chip does not have": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t count;
ISR(INT2_vect) {
  //^^^^^^^^^ board/pin-no-interrupt: INT0
  count++;
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
    "an analog pin of the same board": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(A3), fell, CHANGE);
  //                                    ^^ board/pin-no-interrupt: PC3 (pin A3)
}
void loop() {
}
`,
    },
    "a pin of another chip": {
      "ferry.ino": `
// @wire board attiny85 clock=8MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(3), fell, FALLING);
  //                                    ^ board/pin-no-interrupt: PB3 (pin 3)
}
void loop() {
}
`,
    },
  },
  right: {
    "the two pins that have one": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), fell, FALLING);
  attachInterrupt(digitalPinToInterrupt(3), fell, CHANGE);
}
void loop() {
}
`,
    },
    "the number of the interrupt": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  pinMode(2, INPUT_PULLUP);
  attachInterrupt(0, fell, FALLING);
}
void loop() {
}
`,
    },
    "numbers that only a larger chip has": {
      "ferry.ino": `
// @wire board atmega2560 clock=16MHz
volatile uint8_t count;
void fell() { count++; }
void setup() {
  pinMode(21, INPUT_PULLUP);
  attachInterrupt(2, fell, FALLING);
  attachInterrupt(digitalPinToInterrupt(18), fell, FALLING);
}
void loop() {
}
`,
    },
    "a pin change interrupt on a pin without an external one": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t count;
ISR(PCINT2_vect) {
  count++;
}
int main(void) {
  PCMSK2 = _BV(PCINT20);
  PCICR = _BV(PCIE2);
  sei();
  for (;;) {
  }
}
`,
    },
    "nothing is known of the chip": {
      "ferry.ino": `
volatile uint8_t count;
void fell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(7), fell, FALLING);
}
void loop() {
}
`,
    },
    "an external interrupt by its registers": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t count;
ISR(INT1_vect) {
  count++;
}
int main(void) {
  EICRA = _BV(ISC11);
  EIMSK = _BV(INT1);
  sei();
  for (;;) {
  }
}
`,
    },
  },
});
