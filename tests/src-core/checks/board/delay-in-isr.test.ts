import { delayInIsr } from "../../../../src-core/checks/board/delay-in-isr.ts";
import { ruleTests } from "../harness.ts";

// The mouse's clock falls every 60 to 100 us (10 to 16.7 kHz): The PS/2 Mouse/Keyboard Protocol (Chapweske, 2003),
// "General Description". A byte at 1200 baud, 7N1, is 9 bits = 7.5 ms.

ruleTests(delayInIsr, {
  wrong: {
    "a delay of milliseconds in a vector": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
ISR(INT0_vect) {
  PORTB |= _BV(PB5);
  _delay_ms(5);
  //        ^ board/delay-in-isr: 5 ms
  PORTB &= ~_BV(PB5);
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
    "a delay longer than the mouse's clock period": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile bool level;
void clockFell() {
  delayMicroseconds(100);
  //                ^^^ board/delay-in-isr: 100 us
  level = digitalRead(3);
}
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
}
`,
    },
    "delay() in a function that the handler calls": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
void blink() {
  digitalWrite(13, HIGH);
  delay(20);
  //    ^^ board/delay-in-isr: 20 ms
  digitalWrite(13, LOW);
}
void clockFell() { blink(); }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
}
`,
    },
    "waiting for the transmitter": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 baud=1200 line=7N1
#include <avr/io.h>
#include <avr/interrupt.h>
ISR(INT0_vect) {
  while (!(UCSR0A & _BV(UDRE0))) {
  //     ^^^^^^^^^^^^^^^^^^^^^^ board/delay-in-isr: 7.5 ms
  }
  UDR0 = PIND;
}
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  sei();
  for (;;) {
  }
}
`,
    },
    printing: {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t bits;
void clockFell() {
  bits++;
  Serial.println(bits);
  //     ^^^^^^^ board/delay-in-isr: println
}
void setup() {
  Serial.begin(1200);
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
}
`,
    },
    "short delays that add up in a loop": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
ISR(INT0_vect) {
  for (uint8_t i = 0; i < 8; i++) {
    _delay_us(20);
    //        ^^ board/delay-in-isr: 160 us
    PORTB ^= 1;
  }
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
  },
  right: {
    "a few microseconds, for the data line to settle": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <avr/interrupt.h>
#include <util/delay.h>
volatile uint8_t level;
ISR(INT0_vect) {
  _delay_us(15);
  level = PIND;
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
    "the delay is in the main code": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
volatile uint8_t count;
void clockFell() { count++; }
void setup() {
  attachInterrupt(digitalPinToInterrupt(2), clockFell, FALLING);
}
void loop() {
  delay(20);
  Serial.println(count);
}
`,
    },
    "a loop over the bits of a byte does not wait": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t ones;
ISR(INT0_vect) {
  uint8_t value = PIND;
  while (value) {
    ones += value & 1;
    value >>= 1;
  }
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
    "a byte sent when the transmitter says that it is free": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t next;
ISR(USART_UDRE_vect) {
  UDR0 = next;
  UCSR0B &= ~_BV(UDRIE0);
}
ISR(INT0_vect) {
  if (UCSR0A & _BV(UDRE0)) {
    UDR0 = PIND;
  }
}
int main(void) {
  sei();
  for (;;) {
  }
}
`,
    },
    "the function that waits is called by the main code only": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
#include <avr/interrupt.h>
volatile uint8_t level;
static void send(uint8_t value) {
  while (!(UCSR0A & _BV(UDRE0))) {
  }
  UDR0 = value;
}
ISR(INT0_vect) {
  level = PIND;
}
int main(void) {
  sei();
  for (;;) {
    send(level);
  }
}
`,
    },
  },
});
