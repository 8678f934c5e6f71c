import { bitTime } from "../../../../src-core/checks/serial/bit-time.ts";
import { ruleTests } from "../harness.ts";

// A bit at 1200 baud lasts 1/1200 s = 833.3 us. How far it may be off: ATmega328P datasheet (7810C), Table 19-2
// (receiver tolerance, 7 and 8 data bits, 16 samples).

ruleTests(bitTime, {
  wrong: {
    "the bit time of 9600 baud": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB &= ~_BV(PB1);
  _delay_us(104);
  //        ^^^ serial/bit-time: 833
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1) {
      PORTB |= _BV(PB1);
    } else {
      PORTB &= ~_BV(PB1);
    }
    value >>= 1;
    _delay_us(104);
  }
  PORTB |= _BV(PB1);
  _delay_us(104);
}
int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
    "data bits shorter than the start bit": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(833);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(760);
    //                ^^^ serial/bit-time: 833
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(833);
}
void setup() {
  pinMode(TX, OUTPUT);
}
void loop() {
  sendByte('M');
}
`,
    },
    "a byte that is only sent when RTS comes on": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 rts=PB2 report=two-button shifter=inverting
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
#define BIT_US 410
static void level(uint8_t high) {
  if (high)
    PORTB |= _BV(PB1);
  else
    PORTB &= ~_BV(PB1);
  _delay_us(BIT_US);
  //        ^^^^^^ serial/bit-time: 833
}
static void send(uint8_t value) {
  level(0);
  for (uint8_t i = 0; i < 7; i++) {
    level(value & 1);
    value >>= 1;
  }
  level(1);
}
int main(void) {
  uint8_t was = 0;
  PORTB = _BV(PB1);
  DDRB = _BV(PB1);
  for (;;) {
    uint8_t on = !(PINB & _BV(PB2));
    if (on && !was)
      send('M');
    was = on;
  }
}
`,
    },
    "milliseconds instead of microseconds": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
#define BIT_MS 1
#define TX_PIN 8
void bitOut(uint8_t level) {
  digitalWrite(TX_PIN, level);
  delay(BIT_MS);
  //    ^^^^^^ serial/bit-time: 833
}
void sendByte(uint8_t value) {
  bitOut(LOW);
  for (int i = 0; i < 7; i++) {
    bitOut((value >> i) & 1);
  }
  bitOut(HIGH);
}
void setup() {
  pinMode(TX_PIN, OUTPUT);
}
void loop() {
  sendByte('M');
}
`,
    },
    "a mask that wanders through the byte": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 baud=1200
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
#define BIT_US 416
void tx(unsigned char c) {
  unsigned char mask;
  PORTB &= ~(1 << PB1);
  _delay_us(BIT_US);
  //        ^^^^^^ serial/bit-time: 833
  for (mask = 1; mask < 0x80; mask <<= 1) {
    if (c & mask)
      PORTB |= (1 << PB1);
    else
      PORTB &= ~(1 << PB1);
    _delay_us(BIT_US);
  }
  PORTB |= (1 << PB1);
  _delay_us(BIT_US);
}
int main(void) {
  DDRB |= (1 << PB1);
  while (1) {
    tx('M');
  }
}
`,
    },
    "a longer stop bit does not excuse the rest": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=5 report=two-button
#define BIT 208
inline void mark() { PORTD |= (1 << 5); }
inline void space() { PORTD &= ~(1 << 5); }
void put(char c) {
  space();
  delayMicroseconds(BIT);
  //                ^^^ serial/bit-time: 833
  for (byte m = 1; m != 0x80; m <<= 1) {
    (c & m) ? mark() : space();
    delayMicroseconds(BIT);
  }
  mark();
  delayMicroseconds(2000);
}
void setup() {
  DDRD |= (1 << 5);
  mark();
}
void loop() {
  put('M');
}
`,
    },
    "a constant said to be the bit time": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
// @wire means serial.bit-time
const unsigned int BIT_US = 883;
//                          ^^^ serial/bit-time: 833
void setup() {
}
void loop() {
}
`,
    },
    "a stop bit of half a bit": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  uint8_t n = 7;
  PORTB &= ~_BV(PB1);
  _delay_us(833);
  while (n--) {
    if (value & 1)
      PORTB |= _BV(PB1);
    else
      PORTB &= ~_BV(PB1);
    _delay_us(833);
    value >>= 1;
  }
  PORTB |= _BV(PB1);
  _delay_us(400);
  //        ^^^ serial/bit-time: 833
}
int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
  },
  right: {
    "a bit of 833 us": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB &= ~_BV(PB1);
  _delay_us(833);
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
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
    "a little less, for the instructions in between": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 report=two-button
const uint8_t TX = 8;
void sendByte(uint8_t value) {
  digitalWrite(TX, LOW);
  delayMicroseconds(822);
  for (uint8_t i = 0; i < 7; i++) {
    digitalWrite(TX, value & 1);
    value >>= 1;
    delayMicroseconds(822);
  }
  digitalWrite(TX, HIGH);
  delayMicroseconds(833);
}
void setup() {
  pinMode(TX, OUTPUT);
}
void loop() {
  sendByte('M');
}
`,
    },
    "a bit time computed from the rate": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
#define BAUD 1200
#define BIT_US (1000000.0 / BAUD)
static void level(uint8_t high) {
  if (high)
    PORTB |= _BV(PB1);
  else
    PORTB &= ~_BV(PB1);
  _delay_us(BIT_US);
}
static void send(uint8_t value) {
  level(0);
  for (uint8_t i = 0; i < 7; i++)
    level((value >> i) & 1);
  level(1);
}
int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
    "a faster line that nobody said anything about": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
void sendByte(uint8_t value) {
  digitalWrite(8, LOW);
  delayMicroseconds(102);
  for (uint8_t i = 0; i < 8; i++) {
    digitalWrite(8, value & 1);
    value >>= 1;
    delayMicroseconds(102);
  }
  digitalWrite(8, HIGH);
  delayMicroseconds(102);
}
void setup() {
  pinMode(8, OUTPUT);
}
void loop() {
  sendByte(PINC);
}
`,
    },
    "two stop bits": {
      "tx.c": `
// @wire board attiny85 clock=8MHz
// @wire serial tx=PB1 report=two-button
#define F_CPU 8000000UL
#include <avr/io.h>
#include <util/delay.h>
static void send(uint8_t value) {
  PORTB &= ~_BV(PB1);
  _delay_us(833);
  for (uint8_t i = 0; i < 7; i++) {
    if (value & 1)
      PORTB |= _BV(PB1);
    else
      PORTB &= ~_BV(PB1);
    _delay_us(833);
    value >>= 1;
  }
  PORTB |= _BV(PB1);
  _delay_us(1667);
}
int main(void) {
  DDRB = _BV(PB1);
  for (;;) {
    send('M');
  }
}
`,
    },
    "a shift register on three pins is no serial line": {
      "leds.ino": `
// @wire board atmega328p clock=16MHz
const uint8_t DATA = 8, CLOCK = 9, LATCH = 10;
void show(uint8_t value) {
  digitalWrite(LATCH, LOW);
  for (uint8_t i = 0; i < 8; i++) {
    digitalWrite(DATA, value & 1);
    digitalWrite(CLOCK, HIGH);
    delayMicroseconds(5);
    digitalWrite(CLOCK, LOW);
    value >>= 1;
  }
  digitalWrite(LATCH, HIGH);
}
void setup() {
}
void loop() {
  show(3);
}
`,
    },
    "a byte clocked out by the mouse is no serial line": {
      "ps2.c": `
// @wire board atmega328p clock=16MHz
#define F_CPU 16000000UL
#include <avr/io.h>
#include <util/delay.h>
#define CLK PD2
#define DAT PD3
void ps2_send(uint8_t value) {
  DDRD |= _BV(CLK);
  _delay_us(120);
  DDRD |= _BV(DAT);
  DDRD &= ~_BV(CLK);
  for (uint8_t i = 0; i < 8; i++) {
    while (PIND & _BV(CLK)) {
    }
    if (value & 1)
      DDRD &= ~_BV(DAT);
    else
      DDRD |= _BV(DAT);
    value >>= 1;
    while (!(PIND & _BV(CLK))) {
    }
  }
}
int main(void) {
  ps2_send(0xF4);
  for (;;) {
  }
}
`,
    },
  },
});
