import { baudError } from "../../../../src-core/checks/serial/baud-error.ts";
import { ruleTests } from "../harness.ts";

// Divisors and errors at 2400, 4800 and 9600 baud: ATmega48/88/168 datasheet (2545D), Tables 83 and 84, and
// ATmega328P datasheet (7810C), Table 19-9. 1200 baud is twice the divisor plus one of 2400: the formula of
// Table 20-1, ATmega48A/PA/88A/PA/168A/PA/328/P datasheet (8271D). 1200 baud of the mouse: mouse(4), Linux
// man-pages.

ruleTests(baudError, {
  wrong: {
    // Table 84: UBRR 416 at 16 MHz, U2X = 0, is the entry for 2400 baud, -0.1 %.
    "a divisor for 8 MHz on a board of 16 MHz": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 416;
  //      ^^^ serial/baud-error: 832
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    // Table 84: UBRR 207 at 16 MHz, U2X = 0, is the entry for 4800 baud.
    "the high and the low byte written apart": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
#define DIVISOR 207
int main(void) {
  UBRR0H = DIVISOR >> 8;
  UBRR0L = DIVISOR;
  //       ^^^^^^^ serial/baud-error: 4808
  UCSR0B = (1 << TXEN0);
  UCSR0C = (1 << UCSZ01);
  for (;;) {
  }
}
`,
    },
    // The divisor of U2X = 1 with U2X = 0 halves the rate.
    "eight samples in the formula, sixteen in the register": {
      "uart.c": `
// @wire board atmega328p
// @wire serial uart=0 report=two-button
#define F_CPU 16000000UL
#define BAUD 1200
#include <avr/io.h>
void uart_init(void) {
  UBRR0 = F_CPU / 8 / BAUD - 1;
  //      ^^^^^^^^^^^^^^^^^^^^ serial/baud-error: 600
  UCSR0B = _BV(TXEN0) | _BV(RXEN0);
  UCSR0C = _BV(UCSZ01);
}
int main(void) {
  uart_init();
  for (;;) {
  }
}
`,
    },
    // Table 84: 103 at 16 MHz is 9600 baud, 0.2 %.
    "an own helper called with a divisor for 9600 baud": {
      "uart.c": `
// @wire board atmega328p
// @wire serial uart=0 report=two-button
#define F_CPU 16000000UL
#define BAUD 9600
#define MYUBRR (F_CPU / 16 / BAUD - 1)
#include <avr/io.h>
static void uart_init(unsigned int ubrr) {
  UBRR0H = (unsigned char)(ubrr >> 8);
  UBRR0L = (unsigned char)ubrr;
  UCSR0B = (1 << RXEN0) | (1 << TXEN0);
  UCSR0C = (1 << UCSZ01);
}
int main(void) {
  uart_init(MYUBRR);
  //        ^^^^^^ serial/baud-error: 9615
  for (;;) {
  }
}
`,
    },
    // Table 19-9 of 7810C: 1 MHz, U2X = 0, 9600 baud: UBRR 6, -7.0 %; with U2X = 1: 12, 0.2 %.
    "a rate that the clock cannot make without U2X": {
      "main.c": `
// @wire board atmega328p clock=1MHz
#include <avr/io.h>
#define BAUD 9600
int main(void) {
  UBRR0 = (1000000UL + 8UL * BAUD) / (16UL * BAUD) - 1;
  //      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ serial/baud-error: 8929
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    // Table 84: 832 at 16 MHz with U2X = 1 is 2400 baud, 0.0 %.
    "U2X set for a divisor that was computed without it": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 baud=1200
#include <avr/io.h>
int main(void) {
  UCSR0A |= (1 << U2X0);
  UBRR0 = 832;
  //      ^^^ serial/baud-error: 1666
  UCSR0B = (1 << TXEN0);
  UCSR0C = (1 << UCSZ01);
  for (;;) {
  }
}
`,
    },
    "the serial class of the core opened at another rate": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
void setup() {
  Serial.begin(9600, SERIAL_7N1);
  //           ^^^^ serial/baud-error: 1200
}
void loop() {
  Serial.write('M');
}
`,
    },
    "a class that is given the port": {
      "line.h": `
#pragma once
#include <Arduino.h>
class Line {
 public:
  explicit Line(HardwareSerial &port) : port_(port) {}
  void begin() { port_.begin(4800, SERIAL_7N1); }
  //                         ^^^^ serial/baud-error: 1200
  void send(uint8_t value) { port_.write(value); }
 private:
  HardwareSerial &port_;
};
`,
      "ferry.ino": `
// @wire board atmega32u4 clock=16MHz
// @wire serial uart=1 report=wheel
#include "line.h"
Line pc(Serial1);
void setup() {
  pc.begin();
}
void loop() {
  pc.send('M');
}
`,
    },
    "a divisor that an object keeps": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
class Uart {
 public:
  explicit Uart(uint16_t divisor) : divisor_(divisor) {}
  void begin() {
    UCSR0C = _BV(UCSZ01);
    UBRR0 = divisor_;
    //      ^^^^^^^^ serial/baud-error: 9615
    UCSR0B = _BV(TXEN0);
  }
 private:
  uint16_t divisor_;
};
static Uart uart(103);
int main() {
  uart.begin();
  for (;;) {
  }
}
`,
    },
    "software serial opened at another rate": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial tx=8 baud=1200
#include <SoftwareSerial.h>
SoftwareSerial pc(7, 8);
void setup() {
  pc.begin(2400);
  //       ^^^^ serial/baud-error: 1200
}
void loop() {
  pc.write((uint8_t)0xCD);
}
`,
    },
    // 16 MHz / (16 * (79 + 1)) = 12500 baud: 30 % above 9600, 13 % below 14400.
    "a rate that fits no line, where nothing is said": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 79;
  //      ^^ serial/baud-error: 12500
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    // RM0091, Table 85: 48 MHz, 2400 baud: BRR 0x4E20.
    "a constant said to be the divisor of an STM32F0": {
      "uart.c": `
// @wire board stm32f051r8 clock=48MHz
// @wire serial baud=1200
// @wire means serial.divisor
const unsigned long brr = 0x4E20;
//                        ^^^^^^ serial/baud-error: 2400
int main(void) {
  return (int)brr;
}
`,
    },
  },
  right: {
    "the nearest divisor": {
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
    // The truncating formula is one too low at 8 MHz and 0.16 % off: good enough.
    "the truncating formula": {
      "main.c": `
// @wire board atmega328p
// @wire serial uart=0 report=two-button
#define F_CPU 8000000UL
#define BAUD 1200
#include <avr/io.h>
#define MYUBRR F_CPU / 16 / BAUD - 1
static void uart_init(unsigned int ubrr) {
  UBRR0H = (unsigned char)(ubrr >> 8);
  UBRR0L = (unsigned char)ubrr;
  UCSR0B = (1 << RXEN0) | (1 << TXEN0);
  UCSR0C = (1 << UCSZ01);
}
int main(void) {
  uart_init(MYUBRR);
  for (;;) {
  }
}
`,
    },
    "util/setbaud.h": {
      "main.c": `
// @wire board atmega328p
// @wire serial uart=0 report=two-button
#define F_CPU 20000000UL
#define BAUD 1200
#include <avr/io.h>
#include <util/setbaud.h>
int main(void) {
  UBRR0H = UBRRH_VALUE;
  UBRR0L = UBRRL_VALUE;
#if USE_2X
  UCSR0A |= _BV(U2X0);
#else
  UCSR0A &= ~_BV(U2X0);
#endif
  UCSR0B = _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  for (;;) {
  }
}
`,
    },
    "the serial class of the core": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=wheel
void setup() {
  Serial.begin(1200, SERIAL_7N1);
}
void loop() {
  Serial.write('M');
}
`,
    },
    // Table 19-9 of 7810C: 1 MHz, 9600 baud with U2X = 1: UBRR 12, 0.2 %.
    "eight samples where sixteen would not do": {
      "main.c": `
// @wire board atmega328p clock=1MHz
#include <avr/io.h>
#define BAUD 9600
int main(void) {
  UCSR0A = _BV(U2X0);
  UBRR0 = 12;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "one of several rates that the PC may ask for": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
static const unsigned int divisors[] = {832, 416, 207, 103};
static void set(uint8_t speed) { UBRR0 = divisors[speed]; }
int main(void) {
  UCSR0B = _BV(RXEN0) | _BV(TXEN0);
  UCSR0C = _BV(UCSZ01);
  set(0);
  for (;;) {
    if (UCSR0A & _BV(RXC0)) {
      switch (UDR0) {
        case 'o':
          set(1);
          break;
        case 'q':
          set(3);
          break;
      }
    }
  }
}
`,
    },
    "a rate that is handed to a helper": {
      "main.c": `
// @wire board atmega328p
// @wire serial uart=0 report=two-button
#define F_CPU 16000000UL
#include <avr/io.h>
static void uart_init(uint32_t baud) {
  uint16_t ubrr = (F_CPU + baud * 8UL) / (baud * 16UL) - 1;
  UBRR0H = (uint8_t)(ubrr >> 8);
  UBRR0L = (uint8_t)ubrr;
  UCSR0B |= (1 << TXEN0);
  UCSR0C &= ~(1 << UCSZ00);
}
int main(void) {
  uart_init(1200);
  for (;;) {
  }
}
`,
    },
    "constants computed by templates": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
// @wire serial uart=0 report=two-button
#include <avr/io.h>
template <typename T> constexpr T rounded(T a, T b) { return (a + b / 2) / b; }
constexpr uint16_t divisor(uint32_t clock, uint32_t baud) { return rounded(clock, 16 * baud) - 1; }
int main() {
  constexpr uint16_t d = divisor(16000000, 1200);
  UBRR0H = d >> 8;
  UBRR0L = d & 0xFF;
  UCSR0C = (0 << UMSEL00) | (0 << USBS0) | (1 << UCSZ01) | (0 << UCSZ00);
  UCSR0B = 1 << TXEN0;
  for (;;) {
  }
}
`,
    },
    "rates of other links, where nothing is said": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <avr/io.h>
int main(void) {
  UBRR0 = 31;
  UCSR0B = _BV(TXEN0);
  for (;;) {
  }
}
`,
    },
    "a second port for messages runs at its own rate": {
      "main.c": `
// @wire board atmega2560 clock=16MHz
// @wire serial uart=1 report=two-button
#include <avr/io.h>
int main(void) {
  UBRR0 = 103;
  UCSR0B = _BV(TXEN0);
  UBRR1 = 832;
  UCSR1B = _BV(TXEN1);
  UCSR1C = _BV(UCSZ11);
  for (;;) {
  }
}
`,
    },
    "nothing is known of the clock, so nothing is said of the rate of the core's class": {
      "ferry.ino": `
void setup() {
  Serial.begin(1200);
}
void loop() {
  Serial.println("drift 12");
}
`,
    },
  },
});
