import { identMissing } from "../../../../src-core/checks/serial/ident-missing.ts";
import { ruleTests } from "../harness.ts";

// A PC that turns RTS on waits for 4D: text of a DOS mouse driver, "identification"; Plug and Play External COM Device
// Specification 1.00, B.1. Mice with the five-byte layout may stay silent (the same driver's text).

ruleTests(identMissing, {
  wrong: {
    "reports and nothing else": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
static void put(uint8_t value) {
  loop_until_bit_is_set(UCSR0A, UDRE0);
  UDR0 = value;
}
int main(void) {
  UBRR0 = 832;
  //      ^^^ serial/ident-missing: 4D
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    if (!(PIND & _BV(PD4))) {
      put(0x40);
      put(PINB & 0x3F);
      put(PINC & 0x3F);
    }
  }
}
`,
    },
    "a sketch that only sends what moved": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=wheel
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  //           ^^^^ serial/ident-missing: 4D 5A 40 00 00 00
}
void loop() {
  int x = analogRead(0);
  int y = analogRead(1);
  byte report[4] = {(byte)(0x40 | ((y >> 4) & 0x0C) | ((x >> 6) & 3)), (byte)(x & 0x3F), (byte)(y & 0x3F), 0};
  Serial.write(report, 4);
}
`,
    },
    "bit by bit": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=middle-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB &= ~_BV(PB1);
  _delay_us(833);
  //        ^^^ serial/ident-missing: 4D 33
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) {
      PORTB |= _BV(PB1);
    } else {
      PORTB &= ~_BV(PB1);
    }
    value >>= 1;
    _delay_us(833);
  }
  PORTB |= _BV(PB1);
  _delay_us(833);
}
int main(void) {
  PORTB |= _BV(PB1);
  DDRB = _BV(PB1);
  for (;;) {
    send(0x40 | (PINB & 3));
    send(PINB & 0x3F);
    send(0);
  }
}
`,
    },
    "a class around a software port": {
      "adapter.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=9 rts=7 report=two-button shifter=inverting
#include <SoftwareSerial.h>
class Pc {
 public:
  Pc() : line(8, 9) {}
  void begin() { line.begin(1200); }
  //                        ^^^^ serial/ident-missing: 4D
  void report(byte first, byte x, byte y) {
    line.write(first | 0x80);
    line.write(x | 0x80);
    line.write(y | 0x80);
  }
 private:
  SoftwareSerial line;
};
Pc pc;
void setup() { pc.begin(); }
void loop() {
  if (digitalRead(7) == LOW) pc.report(0x40, PINB & 0x3F, 0);
}
`,
    },
    "an interrupt for each byte": {
      "main.c": `
// @wire board atmega32 clock=8MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
#include <avr/interrupt.h>
#define BAUD 1200
#include <util/setbaud.h>
static volatile uint8_t report[3];
static volatile uint8_t next;
ISR(USART_UDRE_vect) {
  UDR = report[next];
  if (++next == 3) {
    next = 0;
    UCSRB &= ~_BV(UDRIE);
  }
}
int main(void) {
  UBRRH = UBRRH_VALUE;
  UBRRL = UBRRL_VALUE;
  //      ^^^^^^^^^^^ serial/ident-missing: 4D
  UCSRB = _BV(TXEN);
  UCSRC = _BV(URSEL) | _BV(UCSZ1);
  sei();
  for (;;) {
    report[0] = 0x40 | (PINB & 3);
    UCSRB |= _BV(UDRIE);
  }
}
`,
    },
  },
  right: {
    "M each time": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  Serial.write('M');
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "M by its number, by way of a queue": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=PD4 report=two-button shifter=inverting
#include <avr/io.h>
enum { WHO_I_AM = 0x4D };
static uint8_t queue[8];
static uint8_t first, length;
static void put(uint8_t value) { queue[(first + length++) & 7] = value; }
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    if (!(PIND & _BV(PD4))) put(WHO_I_AM);
    if (length && (UCSR0A & _BV(UDRE0))) {
      UDR0 = queue[first++ & 7];
      length--;
    }
  }
}
`,
    },
    "M as a sum": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 rts=4 report=two-button shifter=inverting
const byte SYNC = 0x40;
byte answer[1];
void setup() {
  Serial.begin(1200, SERIAL_7N1);
  answer[0] = SYNC | 0x0D;
}
void loop() {
  while (digitalRead(4) == HIGH) {
  }
  Serial.write(answer, 1);
  while (digitalRead(4) == LOW) {
  }
}
`,
    },
    "mice that may be silent": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=five-byte
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  for (;;) {
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 0x87;
  }
}
`,
    },
    "a library that sends nobody knows what": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
void answer_the_pc(void);
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
    answer_the_pc();
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 0x40;
  }
}
`,
    },
    "a set-up alone": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
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
    "no layout said": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 832;
  UCSR0B = _BV(TXEN0);
  for (;;) {
    loop_until_bit_is_set(UCSR0A, UDRE0);
    UDR0 = 'A';
  }
}
`,
    },
  },
});
